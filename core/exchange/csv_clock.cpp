#include "core/exchange/csv_clock.h"

#include "core/exchange/csv_number.h"
#include "core/exchange/csv_text.h"

#include <charconv>
#include <cmath>

namespace ringhold {

namespace {

using namespace std::chrono_literals;

/// A hundred years: longer than any firing, shorter than any overflow.
constexpr Duration longestElapsed = 24h * 36'525;

Error bad(std::string what) {
    return {ErrorKind::badInput, std::move(what)};
}

Error notThere() {
    return bad("the time is missing");
}

std::optional<double> whole(std::string_view digits) {
    if (digits.empty() || digits.size() > 6 ||
        digits.find_first_not_of("0123456789") != std::string_view::npos)
        return std::nullopt;
    int value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

/// Below 60, with an optional fraction.
std::optional<double> sixtieths(std::string_view text) {
    const auto digits = text.substr(0, text.find_first_of(".,"));
    const auto value = whole(digits);
    if (!value || digits.size() != 2 || *value > 59)
        return std::nullopt;
    if (digits.size() == text.size())
        return value;
    const auto fraction = text.substr(digits.size() + 1);
    const auto parts = whole(fraction.substr(0, 6));
    if (!parts || fraction.find_first_not_of("0123456789") != std::string_view::npos)
        return std::nullopt;
    return *value + *parts / std::pow(10.0, static_cast<double>(std::min<std::size_t>(fraction.size(), 6)));
}

} // namespace

std::optional<Duration> parseColonTime(std::string_view text, ColonForm form) {
    const auto first = text.find(':');
    if (first == std::string_view::npos)
        return std::nullopt;
    const auto second = text.find(':', first + 1);
    const auto leading = whole(text.substr(0, first));
    if (second == std::string_view::npos) {
        const auto rest = sixtieths(text.substr(first + 1));
        if (!leading || !rest || form == ColonForm::unsaid)
            return std::nullopt;
        const double units = *leading * 60.0 + *rest;
        return form == ColonForm::hoursMinutes ? durationFromMinutes(units) : durationFromSeconds(units);
    }
    const auto minutes = sixtieths(text.substr(first + 1, second - first - 1));
    const auto seconds = sixtieths(text.substr(second + 1));
    if (!leading || !minutes || !seconds || std::floor(*minutes) != *minutes)
        return std::nullopt;
    return durationFromSeconds(*leading * 3600.0 + *minutes * 60.0 + *seconds);
}

Result<CsvClock> CsvClock::make(const TimeColumn& column, std::string_view firstCell,
                                const CsvOptions& options) {
    const std::string_view first = trimmedCell(firstCell);
    if (first.empty())
        return notThere();
    if (looksLikeStamp(first)) {
        CsvClock clock(false, 0s, ColonForm::unsaid, options.began);
        clock.m_zoneName = column.utc ? "UTC" : options.zone.empty() ? localZone() : options.zone;
        auto zone = CivilZone::named(clock.m_zoneName);
        if (!zone)
            return zone.error();
        clock.m_zone = *zone;
        return clock;
    }
    const std::string name = "the time column " + shownCell(column.header);
    CsvClock clock(true, column.unit.value_or(0s), column.colons, options.began);
    if (first.find(':') != std::string_view::npos) {
        const auto zero = parseColonTime(first, ColonForm::hoursMinutes);
        if (!column.elapsed && zero && *zero != 0s)
            return bad(name +
                       " has a time of day without a date; it needs both, or to say that it is elapsed");
    } else if (!column.unit && CsvNumbers(false).read(first).ok()) {
        return bad(name + " does not say whether it counts seconds (s), minutes (min) or hours (h)");
    }
    return clock;
}

Result<Instant> CsvClock::read(std::string_view cell, std::optional<Instant> previous) {
    const std::string_view text = trimmedCell(cell);
    if (text.empty())
        return notThere();
    return m_elapsed ? readElapsed(text) : readStamp(text, previous);
}

Result<Instant> CsvClock::readStamp(std::string_view cell, std::optional<Instant> previous) {
    const auto stamp = parseStamp(cell);
    if (!stamp)
        return bad(shownCell(cell) + " is not an ISO 8601 date and time");
    return stamp->offset ? Result<Instant>(stamp->civil - *stamp->offset)
                         : readCivil(cell, stamp->civil, previous);
}

Result<Instant> CsvClock::readCivil(std::string_view cell, Instant civil, std::optional<Instant> previous) {
    const CivilInstants instants = m_zone->instantsOf(civil);
    if (!instants.first)
        return bad("there was no " + shownCell(cell) + " in the zone " + m_zoneName +
                   ": the clocks went forward over it");
    const bool repeated =
        instants.second && previous && *instants.first <= *previous && *instants.second > *previous;
    return repeated ? *instants.second : *instants.first;
}

Result<Instant> CsvClock::readElapsed(std::string_view cell) const {
    const Instant start = m_began.value_or(Instant{});
    if (const auto time = parseColonTime(cell, m_colons))
        return start + *time;
    CsvNumbers numbers(false); // point and comma may well differ from the values' own
    const auto number = numbers.read(cell);
    if (!number || m_unit == 0s)
        return bad(shownCell(cell) + " is not an elapsed time");
    const double seconds = *number * inSeconds(m_unit);
    if (std::abs(seconds) > inSeconds(longestElapsed))
        return bad(shownCell(cell) + " is longer than any firing");
    return start + durationFromSeconds(seconds);
}

} // namespace ringhold
