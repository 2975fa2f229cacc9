// What the potter chose for this book: degrees, time zone, theme, intervals. Kept in the book.
#pragma once

#include "core/base/result.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

#include <QObject>
#include <QString>

#include <optional>

namespace ringhold {

class Book;

enum class ThemeChoice { system, paper, ember };

/// Also how quantities are told on screen and understood when typed: one place, so that units convert
/// everywhere. Lives in the window's thread.
class Preferences : public QObject {
    Q_OBJECT

  public:
    explicit Preferences(const Book& book); ///< the book outlives it

    TemperatureUnit unit() const { return m_unit; }
    ThemeChoice theme() const { return m_theme; }
    /// An IANA name; this computer's by default.
    const std::string& zone() const { return m_zone; }
    /// How often to remind of a reading by hand and of a look.
    Duration reminderInterval() const { return m_reminder; }
    /// How long nobody may be at the kiln before an alarm says so; nothing: it never does.
    std::optional<Duration> attendanceInterval() const { return m_attendance; }

    Status setUnit(TemperatureUnit unit);
    Status setTheme(ThemeChoice theme);
    Status setZone(const std::string& zone);
    Status setReminderInterval(Duration interval);
    Status setAttendanceInterval(std::optional<Duration> interval);

    /// "1 262 °C" or "2 304 °F", with that many decimals; a thin space groups thousands.
    QString temperature(Temperature t, int decimals = 0) const;
    /// The figure alone.
    QString temperatureFigure(Temperature t, int decimals = 0) const;
    QString unitName() const;
    /// "+ 3 °C", "- 12 °F": with its sign when `sign`.
    QString difference(TemperatureDifference d, int decimals = 0, bool sign = true) const;
    /// "+ 58 °C/h".
    QString rate(Rate r, int decimals = 0) const;
    /// "21:14", "21:14:05".
    QString clockTime(Instant at, bool seconds = false) const;
    /// "Sunday 1 March 2026".
    QString date(Instant at) const;
    /// "3 h 31", "22 min", "45 s".
    QString span(Duration d) const;

    double shown(Temperature t) const; ///< in the chosen unit
    Temperature understood(double figure) const;
    double shown(TemperatureDifference d) const;
    TemperatureDifference understoodDifference(double figure) const;
    double shown(Rate r) const;
    Rate understoodRate(double figure) const;

  Q_SIGNALS:
    void changed();

  private:
    Status keep(const char* name, const std::string& value);

    const Book& m_book;
    TemperatureUnit m_unit = TemperatureUnit::celsius;
    ThemeChoice m_theme = ThemeChoice::system;
    std::string m_zone;
    Duration m_reminder = std::chrono::minutes(15);
    std::optional<Duration> m_attendance = std::chrono::hours(1);
};

} // namespace ringhold
