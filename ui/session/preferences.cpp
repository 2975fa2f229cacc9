#include "ui/session/preferences.h"

#include "core/book/reader.h"
#include "core/book/writer.h"

#include <QDate>
#include <QLocale>
#include <QStringList>

#include <cmath>

namespace ringhold {

namespace {

constexpr const char* unitName_ = "unit";
constexpr const char* themeName = "theme";
constexpr const char* zoneName = "zone";
constexpr const char* reminderName = "reminder_minutes";
constexpr const char* attendanceName = "attendance_minutes"; ///< 0: never
constexpr QChar thinSpace(0x202f);                           ///< no line breaks there
constexpr QChar minusSign(0x2212);

std::string kept(const Book& book, const char* name) {
    const auto value = BookReader(book).preference(name);
    return value && *value ? **value : std::string();
}

const char* nameOf(ThemeChoice theme) {
    switch (theme) {
    case ThemeChoice::paper:
        return "paper";
    case ThemeChoice::ember:
        return "ember";
    default:
        return "system";
    }
}

/// "1 262", with a thin space and a true minus sign; the same in every locale, as in the printed report.
QString figure(double value, int decimals) {
    QString text = QString::number(std::abs(value), 'f', decimals);
    const auto point = text.indexOf(QLatin1Char('.'));
    const auto digits = point < 0 ? text.size() : point;
    if (digits > 3)
        text.insert(digits - 3, thinSpace);
    const bool isZero = text.toDouble() == 0 && !text.contains(thinSpace);
    return value < 0 && !isZero ? minusSign + text : text;
}

QString withSign(double value, int decimals) {
    const QString text = figure(std::abs(value), decimals);
    return (value < 0 ? QString(minusSign) : QStringLiteral("+")) + thinSpace + text;
}

} // namespace

Preferences::Preferences(const Book& book) : m_book(book) {
    if (kept(book, unitName_) == "F")
        m_unit = TemperatureUnit::fahrenheit;
    const auto theme = kept(book, themeName);
    m_theme = theme == "paper"   ? ThemeChoice::paper
              : theme == "ember" ? ThemeChoice::ember
                                 : ThemeChoice::system;
    m_zone = kept(book, zoneName);
    if (m_zone.empty())
        m_zone = localZone();
    const double minutes = QString::fromStdString(kept(book, reminderName)).toDouble();
    if (minutes >= 1)
        m_reminder = durationFromMinutes(minutes);
    if (const auto absence = kept(book, attendanceName); !absence.empty()) {
        const double most = QString::fromStdString(absence).toDouble();
        m_attendance = most >= 1 ? std::optional(durationFromMinutes(most)) : std::nullopt;
    }
}

Status Preferences::keep(const char* name, const std::string& value) {
    const auto done = BookWriter(m_book).setPreference(name, value);
    Q_EMIT changed();
    return done;
}

Status Preferences::setUnit(TemperatureUnit unit) {
    m_unit = unit;
    return keep(unitName_, unit == TemperatureUnit::fahrenheit ? "F" : "C");
}

Status Preferences::setTheme(ThemeChoice theme) {
    m_theme = theme;
    return keep(themeName, nameOf(theme));
}

Status Preferences::setZone(const std::string& zone) {
    m_zone = zone;
    return keep(zoneName, zone);
}

Status Preferences::setReminderInterval(Duration interval) {
    m_reminder = interval;
    return keep(reminderName, QString::number(inMinutes(interval)).toStdString());
}

Status Preferences::setAttendanceInterval(std::optional<Duration> interval) {
    m_attendance = interval;
    return keep(attendanceName, QString::number(interval ? inMinutes(*interval) : 0).toStdString());
}

QString Preferences::unitName() const {
    return m_unit == TemperatureUnit::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
}

double Preferences::shown(Temperature t) const {
    return m_unit == TemperatureUnit::celsius ? t.celsius() : t.fahrenheit();
}

Temperature Preferences::understood(double value) const {
    return m_unit == TemperatureUnit::celsius ? Temperature::fromCelsius(value)
                                              : Temperature::fromFahrenheit(value);
}

double Preferences::shown(TemperatureDifference d) const {
    return m_unit == TemperatureUnit::celsius ? d.celsius() : d.fahrenheit();
}

TemperatureDifference Preferences::understoodDifference(double value) const {
    return m_unit == TemperatureUnit::celsius ? TemperatureDifference::fromCelsius(value)
                                              : TemperatureDifference::fromFahrenheit(value);
}

double Preferences::shown(Rate r) const {
    return m_unit == TemperatureUnit::celsius ? r.celsiusPerHour() : r.fahrenheitPerHour();
}

Rate Preferences::understoodRate(double value) const {
    return m_unit == TemperatureUnit::celsius ? Rate::fromCelsiusPerHour(value)
                                              : Rate::fromFahrenheitPerHour(value);
}

QString Preferences::temperatureFigure(Temperature t, int decimals) const {
    return figure(shown(t), decimals);
}

QString Preferences::temperature(Temperature t, int decimals) const {
    return temperatureFigure(t, decimals) + thinSpace + unitName();
}

QString Preferences::difference(TemperatureDifference d, int decimals, bool sign) const {
    return (sign ? withSign(shown(d), decimals) : figure(shown(d), decimals)) + thinSpace + unitName();
}

QString Preferences::rate(Rate r, int decimals) const {
    return withSign(shown(r), decimals) + thinSpace + unitName() + QStringLiteral("/h");
}

QString Preferences::clockTime(Instant at, bool seconds) const {
    return QString::fromStdString(formatInZone(at, m_zone, seconds ? "%H:%M:%S" : "%H:%M"));
}

QString Preferences::date(Instant at) const {
    const auto day =
        QDate::fromString(QString::fromStdString(formatInZone(at, m_zone, "%Y-%m-%d")), Qt::ISODate);
    return QLocale(QLocale::English).toString(day, QStringLiteral("dddd d MMMM yyyy"));
}

QString Preferences::span(Duration d) const {
    const auto seconds = std::llround(inSeconds(d));
    if (seconds < 60)
        return tr("%1 s").arg(seconds);
    const auto minutes = std::llround(inMinutes(d));
    if (minutes < 60)
        return tr("%1 min").arg(minutes);
    return tr("%1 h %2").arg(minutes / 60).arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

} // namespace ringhold
