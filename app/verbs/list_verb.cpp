#include "app/verbs/options.h"
#include "app/verbs/output.h"
#include "app/verbs/verb_list.h"
#include "core/book/book.h"
#include "core/book/reader.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace ringhold {

namespace {

/// Lists the firings of a book.
class ListVerb final : public Verb {
  public:
    std::string name() const override { return "list"; }
    std::string summary() const override { return "List the firings of a book, or find some"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<FiringFilter> filter(const Book& book) const;

    FiringFilter m_asked;
    std::string m_kiln;
    std::string m_from;
    std::string m_until;
    std::string m_book;
    bool m_json = false;
};

Json toJson(const FiringSummary& firing) {
    return {{"firing", static_cast<std::int64_t>(firing.id)},
            {"title", firing.title},
            {"kiln", firing.kilnName},
            {"start", formatIso8601(firing.began)},
            {"end", isoOrNull(firing.ended)},
            {"readings", firing.readings},
            {"peak_C", firing.peak ? rounded(firing.peak->celsius(), 2) : Json()}};
}

std::string line(const FiringSummary& firing) {
    const auto until = firing.ended ? spokenDuration(*firing.ended - firing.began) : "not ended";
    const auto peak = firing.peak ? fmt::format("peak {:.0f} °C", firing.peak->celsius()) : "no temperature";
    return fmt::format("{:>4}  {}  {}  {}  {} readings, {}, {}", static_cast<std::int64_t>(firing.id),
                       dateAndTime(firing.began), firing.kilnName, firing.title, firing.readings, until,
                       peak);
}

/// The instant at which that day begins on this computer's clock.
Result<Instant> dayBegins(const std::string& day, const char* option) {
    const bool isDate = day.size() == 10 && day.find_first_not_of("0123456789-") == std::string::npos;
    if (isDate)
        if (auto at = parseIso8601(day + "T00:00:00", localZone()))
            return *at;
    return Error{ErrorKind::badInput,
                 std::string(option) + " is a day such as 2026-03-01, not \"" + day + "\""};
}

/// The instant at which the day after it begins, daylight saving allowed for: no day is longer than 25 hours
/// or shorter than 23.
Result<Instant> dayEnds(const std::string& day, const char* option) {
    const auto begins = dayBegins(day, option);
    if (!begins)
        return begins;
    const auto next = formatInZone(*begins + std::chrono::hours(30), localZone(), "%F");
    return dayBegins(next, option);
}

bool isNarrowed(const FiringFilter& filter) {
    return filter.kiln || filter.from || filter.before ||
           !(filter.glaze + filter.cone + filter.grade + filter.words).empty();
}

void ListVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    command.add_option("--kiln", m_kiln, "Of this kiln only")->type_name("NAME");
    command.add_option("--glaze", m_asked.glaze, "With a glaze whose name has this in it");
    command.add_option("--cone", m_asked.cone, "Fired to this cone: 9, 03");
    command.add_option("--grade", m_asked.grade, "With a piece of this grade");
    command.add_option("--from", m_from, "Lit on this day or later")->type_name("DAY");
    command.add_option("--until", m_until, "Lit on this day or earlier")->type_name("DAY");
    command.add_option("--words", m_asked.words,
                       "With all of these words, or their beginnings, in title, notes, ware or outcomes");
    addJson(command, m_json);
    command.footer(
        "What is given must all be true of a firing; without any, all are listed. Days are those of this\n"
        "computer's zone.\n"
        "\n"
        "    ringhold list --book studio.ringhold --glaze frost --grade A --from 2026-01-01");
}

Result<FiringFilter> ListVerb::filter(const Book& book) const {
    FiringFilter filter = m_asked;
    if (!m_kiln.empty()) {
        const auto kiln = BookReader(book).kilnNamed(m_kiln);
        if (!kiln)
            return kiln.error();
        if (!*kiln)
            return Error{ErrorKind::notFound, "there is no kiln \"" + m_kiln + "\" in this book", m_book};
        filter.kiln = (*kiln)->id;
    }
    if (!m_from.empty()) {
        const auto from = dayBegins(m_from, "--from");
        if (!from)
            return from.error();
        filter.from = *from;
    }
    if (!m_until.empty()) {
        const auto before = dayEnds(m_until, "--until");
        if (!before)
            return before.error();
        filter.before = *before;
    }
    return filter;
}

Status ListVerb::run(Console& console) {
    const auto book = Book::open(m_book, Access::read);
    if (!book)
        return book.error();
    const auto asked = filter(*book);
    if (!asked)
        return asked.error();
    const auto firings = BookReader(*book).firings(*asked);
    if (!firings)
        return firings.error();
    if (m_json) {
        Json all = Json::array();
        for (const auto& firing : *firings)
            all.push_back(toJson(firing));
        print(console.out, {{"firings", all}});
        return {};
    }
    if (firings->empty())
        console.out << (isNarrowed(*asked) ? "No such firing.\n" : "No firing yet.\n");
    for (const auto& firing : *firings)
        console.out << line(firing) << '\n';
    return {};
}

} // namespace

std::unique_ptr<Verb> makeListVerb() {
    return std::make_unique<ListVerb>();
}

} // namespace ringhold
