#include "core/exchange/stamp.h"

#include <date/tz.h>

#include <algorithm>

namespace ringhold {

namespace {

using namespace std::chrono_literals;

/// Takes a text apart from the left; every step fails quietly once one has failed.
class Scanner {
  public:
    explicit Scanner(std::string_view text) : m_rest(text) {}

    bool ok() const { return m_ok; }
    bool atEnd() const { return m_rest.empty(); }

    /// Exactly so many digits.
    int number(std::size_t digits) {
        int value = 0;
        m_ok = m_ok && m_rest.size() >= digits;
        for (std::size_t i = 0; m_ok && i < digits; ++i) {
            m_ok = isDigit(m_rest[i]);
            value = value * 10 + (m_rest[i] - '0');
        }
        if (m_ok)
            m_rest.remove_prefix(digits);
        return value;
    }
    bool take(std::string_view anyOf) {
        if (!m_ok || m_rest.empty() || anyOf.find(m_rest.front()) == std::string_view::npos)
            return false;
        m_rest.remove_prefix(1);
        return true;
    }
    void need(std::string_view anyOf) { m_ok = take(anyOf) && m_ok; }
    /// The digits that follow, as thousandths, rounded.
    int thousandths() {
        int value = 0;
        int count = 0;
        for (; !m_rest.empty() && isDigit(m_rest.front()); m_rest.remove_prefix(1), ++count) {
            if (count < 3)
                value = value * 10 + (m_rest.front() - '0');
            else if (count == 3 && m_rest.front() >= '5')
                ++value;
        }
        m_ok = m_ok && count > 0;
        for (; count < 3; ++count)
            value *= 10;
        return value;
    }

  private:
    static bool isDigit(char c) { return c >= '0' && c <= '9'; }

    std::string_view m_rest;
    bool m_ok = true;
};

std::optional<Duration> timeOfDay(Scanner& in) {
    const int hour = in.number(2);
    in.need(":");
    const int minute = in.number(2);
    const bool hasSeconds = in.take(":");
    const int second = hasSeconds ? in.number(2) : 0;
    const int thousandths = hasSeconds && in.take(".,") ? in.thousandths() : 0;
    if (!in.ok() || hour > 23 || minute > 59 || second > 59)
        return std::nullopt;
    return Duration(1h * hour + 1min * minute + 1s * second + 1ms * thousandths);
}

/// "+01:00", "-0330" or "+01".
std::optional<Duration> offset(Scanner& in) {
    const bool behind = in.take("-");
    if (!behind)
        in.need("+");
    const int hour = in.number(2);
    const bool colon = in.take(":");
    const int minute = colon || !in.atEnd() ? in.number(2) : 0;
    if (!in.ok() || !in.atEnd() || hour > 23 || minute > 59)
        return std::nullopt;
    return (1h * hour + 1min * minute) * (behind ? -1 : 1);
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    return text;
}

Instant instantOf(date::local_seconds civil, std::chrono::seconds ahead) {
    return Instant(civil.time_since_epoch() - ahead);
}

} // namespace

std::optional<Stamp> parseStamp(std::string_view text) {
    Scanner in(trimmed(text));
    const int year = in.number(4);
    in.need("-");
    const int month = in.number(2);
    in.need("-");
    const int day = in.number(2);
    in.need("Tt ");
    const auto time = timeOfDay(in);
    const std::chrono::year_month_day date(std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day)));
    if (!in.ok() || !time || !date.ok())
        return std::nullopt;
    Stamp stamp{std::chrono::sys_days(date) + *time, {}};
    if (in.atEnd())
        return stamp;
    if (in.take("Zz"))
        stamp.offset = in.atEnd() ? std::optional(0ms) : std::nullopt;
    else
        stamp.offset = offset(in);
    return stamp.offset ? std::optional(stamp) : std::nullopt;
}

bool looksLikeStamp(std::string_view text) {
    Scanner in(trimmed(text));
    in.number(4);
    in.need("-");
    in.number(2);
    in.need("-");
    in.number(2);
    return in.ok();
}

void appendStamp(std::string& out, Instant at) {
    const auto day = std::chrono::floor<std::chrono::days>(at);
    const std::chrono::year_month_day date(day);
    const int year = static_cast<int>(date.year());
    if (year < 0 || year > 9999) {
        out += formatIso8601(at);
        return;
    }
    const auto digits = [&](long value, int count) {
        char text[4];
        for (int i = count; i-- > 0; value /= 10)
            text[i] = static_cast<char>('0' + value % 10);
        out.append(text, static_cast<std::size_t>(count));
    };
    const std::chrono::hh_mm_ss time(at - day);
    digits(year, 4);
    out += '-';
    digits(static_cast<long>(static_cast<unsigned>(date.month())), 2);
    out += '-';
    digits(static_cast<long>(static_cast<unsigned>(date.day())), 2);
    out += 'T';
    digits(time.hours().count(), 2);
    out += ':';
    digits(time.minutes().count(), 2);
    out += ':';
    digits(time.seconds().count(), 2);
    if (time.subseconds() != 0ms) {
        out += '.';
        digits(time.subseconds().count(), 3);
    }
    out += 'Z';
}

Result<CivilZone> CivilZone::named(const std::string& name) {
    try {
        return CivilZone(date::locate_zone(name));
    } catch (const std::exception&) {
        return Error{ErrorKind::badInput, "the time zone \"" + name + "\" is not known"};
    }
}

CivilInstants CivilZone::instantsOf(Instant civil) {
    if (civil >= m_begin && civil < m_end)
        return {civil - m_offset, {}};
    const auto whole = std::chrono::floor<std::chrono::seconds>(civil);
    const auto fraction = civil - whole;
    const date::local_seconds local(whole.time_since_epoch());
    const date::local_info info = m_zone->get_info(local);
    if (info.result == date::local_info::nonexistent)
        return {};
    if (info.result == date::local_info::ambiguous)
        return {instantOf(local, info.first.offset) + fraction,
                instantOf(local, info.second.offset) + fraction};
    m_offset = info.first.offset;
    // A day from either change, far more than clocks are ever moved; never so far that it overflows.
    m_begin = std::max(Instant(info.first.begin), civil - 24h * 366) + m_offset + 24h;
    m_end = std::min(Instant(info.first.end), civil + 24h * 366) + m_offset - 24h;
    return {civil - m_offset, {}};
}

} // namespace ringhold
