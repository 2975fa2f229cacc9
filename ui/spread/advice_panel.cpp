#include "ui/spread/advice_panel.h"

#include "ui/common/doubt_list.h"
#include "ui/common/tone.h"
#include "ui/common/words_on_page.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/advice_model.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int refresh_ms = 4000;

} // namespace

AdvicePanel::AdvicePanel(FiringSession& session, const Preferences& preferences, const Theme& theme,
                         QWidget* parent)
    : QFrame(parent), m_theme(theme), m_model(new AdviceModel(session, preferences, this)),
      m_grid(new QGridLayout), m_fit(softLabel()) {
    setProperty("card", true);
    setAccessibleName(tr("Advice"));
    auto* doubts = new DoubtList(session, preferences);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 8, 14, 8);
    column->setSpacing(6);
    column->addWidget(doubts);
    m_grid->setHorizontalSpacing(10);
    m_grid->setVerticalSpacing(4);
    m_grid->setColumnStretch(2, 1);
    column->addLayout(m_grid);
    column->addWidget(m_fit);
    m_hold = addRow(tr("Hold at"), tr("Hold at what temperature"),
                    [this](const QString& text) { return m_model->setHold(text); });
    m_by = addRow(tr("Down by"), tr("Have the cone down by what time"),
                  [this](const QString& text) { return m_model->setBy(text); });
    m_more = addRow(tr("Longer at the top"), tr("How much longer at the top"),
                    [this](const QString& text) { return m_model->setMore(text); });
    m_drop = addRow(tr("Drop now"), {}, nullptr);
    connect(doubts, &DoubtList::troubled, this, &AdvicePanel::troubled);
    connect(m_model, &AdviceModel::changed, this, &AdvicePanel::showAnswers);
    m_later.setSingleShot(true);
    connect(&m_later, &QTimer::timeout, m_model, &AdviceModel::refresh);
    connect(&session, &FiringSession::forecastChanged, this, [this] {
        if (isVisible() && !m_later.isActive())
            m_later.start(refresh_ms);
    });
    connect(&session, &FiringSession::linesChanged, this, [this] {
        if (isVisible())
            m_later.start(0);
    });
    connect(&preferences, &Preferences::changed, this, [this] {
        if (isVisible())
            m_model->refresh();
    });
    connect(&theme, &Theme::changed, this, &AdvicePanel::dress);
    dress();
}

AdvicePanel::Row AdvicePanel::addRow(const QString& ask, const QString& spoken, const Setter& set) {
    const int row = m_grid->rowCount();
    auto* question = new QLabel(ask);
    m_grid->addWidget(question, row, 0);
    Row made{nullptr, new QLabel};
    made.answer->setWordWrap(true);
    m_grid->addWidget(made.answer, row, 2);
    if (!set)
        return made;
    made.target = new QLineEdit;
    made.target->setAccessibleName(spoken);
    question->setBuddy(made.target);
    m_grid->addWidget(made.target, row, 1);
    connect(made.target, &QLineEdit::editingFinished, this, [field = made.target, answer = made.answer, set] {
        if (!field->isModified())
            return;
        if (!set(field->text()))
            answer->setText(tr("“%1” is not understood.").arg(field->text()));
        field->setModified(false);
    });
    return made;
}

void AdvicePanel::begin() {
    m_hold.target->setFocus(Qt::ShortcutFocusReason);
    m_hold.target->selectAll();
}

void AdvicePanel::showAnswers() {
    const auto fill = [](const Row& row, const QString& target, const QString& answer) {
        if (row.target && !row.target->isModified() && row.target->text() != target)
            row.target->setText(target);
        row.answer->setText(answer.isEmpty() ? tr("Nothing can be said now.") : answer);
        if (row.target)
            row.target->setAccessibleDescription(row.answer->text());
    };
    fill(m_hold, m_model->holdText(), m_model->holdAnswer());
    fill(m_by, m_model->byText(), m_model->byAnswer());
    fill(m_more, m_model->moreText(), m_model->moreAnswer());
    fill(m_drop, {}, m_model->dropAnswer());
    m_fit->setText(m_model->modelFit());
}

void AdvicePanel::dress() {
    const QFontMetrics metrics(m_theme.text(TextSize::body));
    for (const auto& row : {m_hold, m_by, m_more})
        row.target->setFixedWidth(metrics.horizontalAdvance(QStringLiteral("000000000")) + 20);
    m_drop.answer->setMinimumHeight(2 * metrics.lineSpacing()); // the longest answer
    m_fit->setFont(m_theme.text(TextSize::small));
}

void AdvicePanel::showEvent(QShowEvent* event) {
    QFrame::showEvent(event);
    m_model->refresh();
}

void AdvicePanel::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT folded();
    else
        QFrame::keyPressEvent(event);
}

} // namespace ringhold
