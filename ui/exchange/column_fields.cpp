#include "ui/exchange/column_fields.h"

#include "ui/exchange/preview_model.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include <array>

namespace ringhold {

namespace {

constexpr std::array meanings{ColumnMeaning::leftOut,    ColumnMeaning::celsius,
                              ColumnMeaning::fahrenheit, ColumnMeaning::volts,
                              ColumnMeaning::amps,       ColumnMeaning::oxygenMillivolts,
                              ColumnMeaning::dutyShare,  ColumnMeaning::dutyPercent};

} // namespace

ColumnFields::ColumnFields(const QString& zone, QWidget* parent) : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(10);
    m_time = addChoice(tr("&Time is in"), 0, 0);
    m_timeUnit = addChoice(tr("counted &in"), 0, 2);
    m_control = addChoice(tr("C&ontrol probe"), 1, 0);
    m_degrees = addChoice(tr("&Degrees"), 1, 2);
    m_began = addLine(tr("&Began at"), tr("2026-03-01T06:30, for times that count from the start"), 2, 0);
    m_zone = addLine(tr("&Zone of its times"), zone, 2, 2);
    m_zone->setText(zone);
    m_column = addChoice(tr("Col&umn"), 3, 0);
    m_meaning = addChoice(tr("&holds"), 3, 2);
    for (int column : {1, 3})
        grid->setColumnStretch(column, 1);
    m_timeUnit->addItem(tr("as its heading says"));
    m_timeUnit->addItem(tr("seconds"), 1);
    m_timeUnit->addItem(tr("minutes"), 60);
    m_timeUnit->addItem(tr("hours"), 3600);
    m_degrees->addItem(tr("as the headings say"));
    m_degrees->addItem(tr("°C"), static_cast<int>(TemperatureUnit::celsius));
    m_degrees->addItem(tr("°F"), static_cast<int>(TemperatureUnit::fahrenheit));
    m_meaning->addItem(meaningWords(std::nullopt));
    for (const auto meaning : meanings)
        m_meaning->addItem(meaningWords(meaning), static_cast<int>(meaning));
    connect(m_column, &QComboBox::activated, this, &ColumnFields::showMeaning);
    connect(m_meaning, &QComboBox::activated, this, &ColumnFields::takeMeaning);
    for (auto* choice : {m_time, m_timeUnit, m_control, m_degrees})
        connect(choice, &QComboBox::activated, this, &ColumnFields::changed);
    for (auto* line : {m_began, m_zone})
        connect(line, &QLineEdit::editingFinished, this, &ColumnFields::changed);
}

QComboBox* ColumnFields::addChoice(const QString& name, int row, int column) {
    auto* choice = new QComboBox;
    auto* label = new QLabel(name);
    label->setBuddy(choice);
    choice->setAccessibleName(QString(name).remove(QLatin1Char('&')));
    choice->setMinimumContentsLength(10);
    choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    auto* grid = static_cast<QGridLayout*>(layout());
    grid->addWidget(label, row, column);
    grid->addWidget(choice, row, column + 1);
    return choice;
}

QLineEdit* ColumnFields::addLine(const QString& name, const QString& hint, int row, int column) {
    auto* line = new QLineEdit;
    auto* label = new QLabel(name);
    label->setBuddy(line);
    line->setAccessibleName(QString(name).remove(QLatin1Char('&')));
    line->setPlaceholderText(hint);
    auto* grid = static_cast<QGridLayout*>(layout());
    grid->addWidget(label, row, column);
    grid->addWidget(line, row, column + 1);
    return line;
}

void ColumnFields::offer(const CsvPreview& preview) {
    m_said.clear();
    for (auto* choice : {m_time, m_control, m_column})
        choice->clear();
    m_time->addItem(tr("found by itself"));
    m_control->addItem(tr("the first temperature"));
    for (const auto& column : preview.columns) {
        const QString heading = QString::fromStdString(column.header);
        for (auto* choice : {m_time, m_control, m_column})
            choice->addItem(heading, heading);
    }
    showMeaning();
}

void ColumnFields::showMeaning() {
    const auto said = m_said.find(m_column->currentData().toString().toStdString());
    const int index = said == m_said.end() ? 0 : m_meaning->findData(static_cast<int>(said->second));
    m_meaning->setCurrentIndex(index);
}

void ColumnFields::takeMeaning() {
    const std::string column = m_column->currentData().toString().toStdString();
    if (m_meaning->currentData().isValid())
        m_said[column] = static_cast<ColumnMeaning>(m_meaning->currentData().toInt());
    else
        m_said.erase(column);
    Q_EMIT changed();
}

Result<CsvOptions> ColumnFields::options() const {
    CsvOptions options;
    options.zone = m_zone->text().trimmed().toStdString();
    options.time = m_time->currentData().toString().toStdString();
    options.control = m_control->currentData().toString().toStdString();
    options.columns = m_said;
    if (m_timeUnit->currentData().isValid())
        options.timeUnit = std::chrono::seconds(m_timeUnit->currentData().toInt());
    if (m_degrees->currentData().isValid())
        options.unit = static_cast<TemperatureUnit>(m_degrees->currentData().toInt());
    const std::string began = m_began->text().trimmed().toStdString();
    if (began.empty())
        return options;
    const auto at = parseIso8601(began, options.zone.empty() ? localZone() : options.zone);
    if (!at)
        return at.error();
    options.began = *at;
    return options;
}

} // namespace ringhold
