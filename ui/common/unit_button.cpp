#include "ui/common/unit_button.h"

#include "ui/session/preferences.h"

namespace ringhold {

UnitButton::UnitButton(Preferences& preferences, QWidget* parent)
    : QPushButton(parent), m_preferences(preferences) {
    setAutoDefault(false);
    setToolTip(tr("What is kept stays as it is"));
    connect(&preferences, &Preferences::changed, this, &UnitButton::dress);
    connect(this, &QPushButton::clicked, this, &UnitButton::turn);
    dress();
}

void UnitButton::dress() {
    const bool celsius = m_preferences.unit() == TemperatureUnit::celsius;
    setText(celsius ? tr("in °F") : tr("in °C"));
    setAccessibleName(celsius ? tr("Show degrees Fahrenheit") : tr("Show degrees Celsius"));
}

void UnitButton::turn() {
    const bool celsius = m_preferences.unit() == TemperatureUnit::celsius;
    const auto kept = m_preferences.setUnit(celsius ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius);
    if (!kept)
        Q_EMIT refused(QString::fromStdString(kept.error().text()));
}

} // namespace ringhold
