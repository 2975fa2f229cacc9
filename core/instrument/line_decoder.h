// From a text line of an instrument to samples. What cannot be understood for certain is left alone.
#pragma once

#include "core/instrument/instrument.h"
#include "core/instrument/line_format.h"

#include <string_view>
#include <vector>

namespace ringhold {

struct LineField;

struct DecodedLine {
    std::vector<Sample> samples;
    /// All of the line was understood. When it was not, there may still be samples from the fields that were.
    bool understood = false;
};

/// Understands a number with an optional unit and label ("1043.2", "T1=1043.2C", "1910 F"), several of them
/// on one line when each has a label or a unit, and the word "open" for an open probe. C and F are
/// temperatures, mV with a thermocouple type set too; V and A are line volts and amps; without a unit it is a
/// temperature.
///
/// Refused, field by field: temperatures above 1800 °C or below -50 °C, volts and amps below 0 or above 1000,
/// a number among others with neither label nor unit, and one without unit whose label says that it is no
/// temperature ("time=600"). Refused as a whole: lines of any other form, longer than longestLine, or
/// telling one thing twice.
///
/// Values of one quantity that differ by unit alone ("1043.2C 980.1C") are labelled "1", "2" ...
class LineDecoder {
  public:
    static constexpr std::size_t longestLine = 512;

    explicit LineDecoder(LineFormat format = {}) : m_format(format) {}

    /// A line without its end (a CR left over does no harm), heard at that instant. An empty line is
    /// understood and says nothing.
    DecodedLine decode(std::string_view line, Instant at) const;

  private:
    /// Quantity and value of a field; nothing when it must be refused.
    struct Meaning {
        Quantity quantity = Quantity::temperature;
        std::optional<double> value;
    };
    std::optional<Meaning> meaningOf(const LineField& field, bool amongOthers) const;
    std::optional<Temperature> temperatureOf(const LineField& field) const;

    LineFormat m_format;
};

} // namespace ringhold
