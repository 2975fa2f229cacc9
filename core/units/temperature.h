// Temperature, temperature difference and rate of change: three types, so that "plan minus actual" has a sign
// and 9 °F more is 5 °C more while 9 °F is -12.8 °C.
#pragma once

#include <compare>

namespace ringhold {

/// The scale in which people give and read temperatures; inside they are °C.
enum class TemperatureUnit { celsius, fahrenheit };

/// How much hotter one temperature is than another. May be negative.
class TemperatureDifference {
  public:
    constexpr TemperatureDifference() = default;
    static constexpr TemperatureDifference fromCelsius(double degrees) {
        return TemperatureDifference(degrees);
    }
    static constexpr TemperatureDifference fromFahrenheit(double degrees) {
        return TemperatureDifference(degrees / 1.8);
    }
    constexpr double celsius() const { return m_celsius; }
    constexpr double fahrenheit() const { return m_celsius * 1.8; }

    constexpr auto operator<=>(const TemperatureDifference&) const = default;
    constexpr TemperatureDifference operator-() const { return TemperatureDifference(-m_celsius); }
    constexpr TemperatureDifference operator+(TemperatureDifference o) const {
        return TemperatureDifference(m_celsius + o.m_celsius);
    }
    constexpr TemperatureDifference operator-(TemperatureDifference o) const {
        return TemperatureDifference(m_celsius - o.m_celsius);
    }
    constexpr TemperatureDifference operator*(double factor) const {
        return TemperatureDifference(m_celsius * factor);
    }

  private:
    explicit constexpr TemperatureDifference(double celsius) : m_celsius(celsius) {}
    double m_celsius = 0;
};

/// A temperature on the ITS-90 scale. There is no "no reading" value: use std::optional.
class Temperature {
  public:
    static constexpr double zeroCelsius_K = 273.15;

    static constexpr Temperature fromCelsius(double celsius) { return Temperature(celsius); }
    static constexpr Temperature fromKelvin(double kelvin) { return Temperature(kelvin - zeroCelsius_K); }
    static constexpr Temperature fromFahrenheit(double fahrenheit) {
        return Temperature((fahrenheit - 32.0) / 1.8);
    }
    constexpr double celsius() const { return m_celsius; }
    constexpr double kelvin() const { return m_celsius + zeroCelsius_K; }
    constexpr double fahrenheit() const { return m_celsius * 1.8 + 32.0; }

    constexpr auto operator<=>(const Temperature&) const = default;
    constexpr TemperatureDifference operator-(Temperature o) const {
        return TemperatureDifference::fromCelsius(m_celsius - o.m_celsius);
    }
    constexpr Temperature operator+(TemperatureDifference d) const {
        return Temperature(m_celsius + d.celsius());
    }
    constexpr Temperature operator-(TemperatureDifference d) const {
        return Temperature(m_celsius - d.celsius());
    }

  private:
    explicit constexpr Temperature(double celsius) : m_celsius(celsius) {}
    double m_celsius;
};

/// How fast a temperature changes; negative when it falls.
class Rate {
  public:
    constexpr Rate() = default;
    static constexpr Rate fromCelsiusPerHour(double rate) { return Rate(rate); }
    static constexpr Rate fromFahrenheitPerHour(double rate) { return Rate(rate / 1.8); }
    constexpr double celsiusPerHour() const { return m_celsiusPerHour; }
    constexpr double fahrenheitPerHour() const { return m_celsiusPerHour * 1.8; }

    constexpr auto operator<=>(const Rate&) const = default;
    constexpr Rate operator-() const { return Rate(-m_celsiusPerHour); }

  private:
    explicit constexpr Rate(double rate) : m_celsiusPerHour(rate) {}
    double m_celsiusPerHour = 0;
};

} // namespace ringhold
