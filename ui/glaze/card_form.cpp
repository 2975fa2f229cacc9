#include "ui/glaze/card_form.h"

#include "ui/common/words_on_page.h"
#include "ui/plan/typed_figures.h"
#include "ui/session/preferences.h"

#include <QEvent>
#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QVBoxLayout>

namespace ringhold {

QString habitsText(const std::vector<HabitBand>& habits, const Preferences& preferences) {
    QStringList bands;
    for (const auto& band : habits)
        bands << CardForm::tr("%1 to %2 %3")
                     .arg(typedForm(band.low, preferences), typedForm(band.high, preferences),
                          QString::fromStdString(band.word));
    return bands.join(QStringLiteral("; "));
}

std::optional<std::vector<HabitBand>> habitsTyped(const QString& text, const Preferences& preferences) {
    static const QRegularExpression form(QStringLiteral("^\\s*(\\d+(?:[.,]\\d+)?)\\s*(?:to|-|–|…)\\s*(\\d+(?:"
                                                        "[.,]\\d+)?)\\s*(°?[CF]\\b)?[\\s:,]*(\\S.*?)\\s*$"));
    std::vector<HabitBand> habits;
    for (const QString& part : text.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty())
            continue;
        const auto match = form.match(part);
        const auto low = typedTemperature(QString(match.captured(1) + match.captured(3)), preferences);
        const auto high = typedTemperature(QString(match.captured(2) + match.captured(3)), preferences);
        if (!match.hasMatch() || !low || !high || *high < *low)
            return std::nullopt;
        habits.push_back({*low, *high, match.captured(4).toStdString()});
    }
    return habits;
}

CardForm::CardForm(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_form(new QFormLayout(this)),
      m_notes(new QPlainTextEdit) {
    m_form->setContentsMargins(0, 0, 0, 0);
    m_form->setVerticalSpacing(6);
    m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    addText(tr("Name"), tr("frost"), &GlazeCard::name);
    addText(tr("Cone"), tr("10"), &GlazeCard::cone);
    addTemperature(tr("Top"), tr("the hottest it is taken to"), &GlazeCard::top);
    addText(tr("How it runs"), tr("much; needs a deep catcher"), &GlazeCard::running);
    addTemperature(tr("Grows from"), tr("the coolest at which its crystals grow"), &GlazeCard::growLow);
    addTemperature(tr("Grows to"), tr("the hottest"), &GlazeCard::growHigh);
    addText(tr("Colours"), tr("which colour comes at which temperature"), &GlazeCard::colourTemperatures);
    addHabits();
    addText(tr("Application"), tr("how thick, and how it is put on"), &GlazeCard::application);
    addNotes();
}

CardForm::Field CardForm::addField(const QString& label, const QString& hint) {
    Field field{label, new QLineEdit, new Remark(Remark::Kind::warning)};
    auto* row = new QWidget;
    auto* column = new QVBoxLayout(row);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(field.line);
    column->addWidget(field.trouble);
    field.line->setPlaceholderText(hint);
    field.line->setAccessibleName(label);
    m_form->addRow(label, row);
    return field;
}

void CardForm::addText(const QString& label, const QString& hint, std::string GlazeCard::*member) {
    const Field field = addField(label, hint);
    m_texts.push_back({field, member});
    connect(field.line, &QLineEdit::editingFinished, this, [this, field, member] {
        const QString text = field.line->text().trimmed();
        const bool nameless = member == &GlazeCard::name && text.isEmpty();
        field.trouble->say(nameless ? tr("A glaze has a name.") : QString());
        if (nameless)
            return;
        GlazeCard changed = m_card;
        changed.*member = text.toStdString();
        tell(changed, field.label);
    });
}

void CardForm::addTemperature(const QString& label, const QString& hint,
                              std::optional<Temperature> GlazeCard::*member) {
    const Field field = addField(label, hint);
    m_temperatures.push_back({field, member});
    connect(field.line, &QLineEdit::editingFinished, this, [this, field, member] {
        const QString text = field.line->text().trimmed();
        if (m_card.*member && text == typedForm(*(m_card.*member), m_preferences))
            return; // what is kept is not rounded by being read
        const auto typed = typedTemperature(text, m_preferences);
        GlazeCard changed = m_card;
        changed.*member = typed;
        const bool senseless = !text.isEmpty() && !typed;
        const bool crossed = changed.growLow && changed.growHigh && *changed.growHigh < *changed.growLow;
        field.trouble->say(senseless ? tr("This is no temperature.")
                           : crossed ? tr("Crystals grow from the lower temperature to the higher.")
                                     : QString());
        if (senseless || crossed)
            return;
        tell(changed, field.label);
        field.line->setText(typed ? typedForm(*typed, m_preferences) : QString());
    });
}

void CardForm::addHabits() {
    m_habits = addField(tr("Habits"), tr("1040 to 1060 bars; 1060 to 1090 fans"));
    connect(m_habits.line, &QLineEdit::editingFinished, this, [this] {
        if (m_habits.line->text() == habitsText(m_card.habits, m_preferences))
            return;
        const auto typed = habitsTyped(m_habits.line->text(), m_preferences);
        m_habits.trouble->say(
            typed ? QString()
                  : tr("Each band is two temperatures and a word: 1040 to 1060 bars. Bands are "
                       "parted by semicolons."));
        if (!typed)
            return;
        GlazeCard changed = m_card;
        changed.habits = *typed;
        tell(changed, m_habits.label);
    });
}

void CardForm::addNotes() {
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->setTabChangesFocus(true);
    m_notes->setMinimumHeight(3 * fontMetrics().lineSpacing() + 16);
    m_notes->installEventFilter(this);
    m_form->addRow(tr("Notes"), m_notes);
}

bool CardForm::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_notes && event->type() == QEvent::FocusOut) {
        GlazeCard changed = m_card;
        changed.notes = m_notes->toPlainText().trimmed().toStdString();
        tell(changed, tr("Notes"));
    }
    return QWidget::eventFilter(watched, event);
}

void CardForm::tell(const GlazeCard& changed, const QString& what) {
    if (changed == m_card)
        return;
    m_card = changed;
    Q_EMIT edited(changed, what);
}

void CardForm::show(const GlazeCard& card) {
    if (card == m_card && m_shownIn == m_preferences.unit())
        return; // what stands in a field and makes no sense stays to be mended
    m_card = card;
    m_shownIn = m_preferences.unit();
    for (const auto& [field, member] : m_texts) {
        field.line->setText(QString::fromStdString(card.*member));
        field.trouble->say({});
    }
    for (const auto& [field, member] : m_temperatures) {
        field.line->setText(card.*member ? typedForm(*(card.*member), m_preferences) : QString());
        field.trouble->say({});
    }
    m_habits.line->setText(habitsText(card.habits, m_preferences));
    m_habits.trouble->say({});
    m_notes->setPlainText(QString::fromStdString(card.notes));
}

void CardForm::startWriting() {
    m_texts.front().field.line->setFocus();
    m_texts.front().field.line->selectAll();
}

} // namespace ringhold
