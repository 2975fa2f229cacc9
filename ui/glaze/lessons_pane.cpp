#include "ui/glaze/lessons_pane.h"

#include "ui/common/choice_row.h"
#include "ui/common/words_on_page.h"
#include "ui/glaze/lesson_plot.h"
#include "ui/glaze/lesson_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr std::array allCauses{Cause::growthHold, Cause::holdTime, Cause::peak, Cause::application,
                               Cause::position};
constexpr std::array allJudged{Judged::largest, Judged::grade, Judged::crystals};
constexpr double shortestHold_h = 1;
constexpr double longestHold_h = 6;

std::vector<ChoiceRow::Choice> causeChoices() {
    std::vector<ChoiceRow::Choice> choices;
    for (const auto cause : allCauses)
        choices.push_back({causeWords(cause), {}});
    return choices;
}

std::vector<ChoiceRow::Choice> judgedChoices() {
    std::vector<ChoiceRow::Choice> choices;
    for (const auto judged : allJudged)
        choices.push_back({judgedWords(judged), {}});
    return choices;
}

QLabel* words() {
    auto* label = new QLabel;
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

} // namespace

LessonsPane::LessonsPane(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_judged(new ChoiceRow(tr("Judged by"), judgedChoices())),
      m_causes(new ChoiceRow(tr("Against"), causeChoices())), m_plot(new LessonPlot(preferences, theme)),
      m_words(words()), m_confounding(words()), m_offsets(softLabel()), m_next(softLabel()) {
    m_judged->setCurrent(0);
    m_causes->setCurrent(0);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    for (auto* choices : {m_judged, m_causes}) {
        auto* row = new QHBoxLayout;
        row->addWidget(choices);
        row->addStretch(1);
        column->addLayout(row);
    }
    column->addWidget(m_plot, 1);
    column->addWidget(m_words);
    column->addWidget(m_confounding);
    column->addWidget(m_next);
    column->addWidget(m_offsets);
    connect(m_judged, &ChoiceRow::chosen, this, &LessonsPane::learn);
    connect(m_causes, &ChoiceRow::chosen, this, &LessonsPane::tell);
}

Judged LessonsPane::judged() const {
    return allJudged[static_cast<std::size_t>(m_judged->current().value_or(0))];
}

void LessonsPane::show(const GlazeCard& card, std::vector<PieceResult> pieces) {
    m_card = card;
    m_pieces = std::move(pieces);
    learn();
}

void LessonsPane::learn() {
    LearningQuestion question;
    question.judged = judged();
    question.questions = static_cast<int>(allJudged.size()); // all three can be looked at
    m_lessons = learnFrom(m_pieces, question);
    tell();
}

void LessonsPane::tell() {
    const Cause cause = allCauses[static_cast<std::size_t>(m_causes->current().value_or(0))];
    const auto lesson = std::ranges::find(m_lessons, cause, &Lesson::cause);
    if (lesson == m_lessons.end())
        return;
    m_plot->show(m_pieces, *lesson, judged());
    m_words->setText(lessonWords(*lesson, judged(), m_preferences));
    m_confounding->setText(confoundingWords(*lesson, m_preferences));
    m_confounding->setVisible(!m_confounding->text().isEmpty());
    m_next->setText(nextWords());
    m_offsets->setText(
        tr("Circles are pieces; line and band are the mean of a firing’s pieces with its 90 % interval.") +
        QLatin1Char(' ') + offsetsWords(*lesson, m_preferences));
    m_offsets->setVisible(lesson->pieces > 0);
}

QString LessonsPane::nextWords() const {
    if (!m_card.growLow || !m_card.growHigh || !(*m_card.growLow < *m_card.growHigh))
        return tr(
            "Write on the card between which temperatures its crystals grow: then the next firing that would "
            "tell most is worked out here.");
    std::vector ranges{
        FeasibleRange{Cause::growthHold, m_card.growLow->celsius(), m_card.growHigh->celsius()},
        FeasibleRange{Cause::holdTime, shortestHold_h, longestHold_h}};
    if (const auto peaks = peaksToTry(m_pieces, judged()))
        ranges.push_back(*peaks);
    const auto next = nextExperiment(m_pieces, judged(), ranges);
    return next ? experimentWords(*next, m_preferences) : QString::fromStdString(next.error().text());
}

} // namespace ringhold
