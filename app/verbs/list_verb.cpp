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
    std::string summary() const override { return "List the firings of a book"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
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

void ListVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    addJson(command, m_json);
}

Status ListVerb::run(Console& console) {
    const auto book = Book::open(m_book, Access::read);
    if (!book)
        return book.error();
    const auto firings = BookReader(*book).firings();
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
        console.out << "No firing yet.\n";
    for (const auto& firing : *firings)
        console.out << line(firing) << '\n';
    return {};
}

} // namespace

std::unique_ptr<Verb> makeListVerb() {
    return std::make_unique<ListVerb>();
}

} // namespace ringhold
