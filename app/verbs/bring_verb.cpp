#include "app/verbs/csv_arguments.h"
#include "app/verbs/options.h"
#include "app/verbs/output.h"
#include "app/verbs/verb_list.h"
#include "core/book/book.h"
#include "core/book/firing_intake.h"
#include "core/exchange/brought_file.h"
#include "core/exchange/file.h"
#include "core/plan/plan_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace ringhold {

namespace {

/// Brings a past firing from a file into the book.
class BringVerb final : public Verb {
  public:
    std::string name() const override { return "bring"; }
    std::string summary() const override { return "Bring a past firing from a CSV or JSON file into a book"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<BroughtAs> as() const;
    Result<BroughtFile> read() const;
    void tellTaken(std::ostream& out, const TakenFiring& taken, const BroughtFile& brought) const;
    void tellKnown(std::ostream& out, const FiringSummary& known) const;

    CsvArguments m_csv;
    std::string m_book;
    std::string m_kiln;
    std::string m_title;
    std::string m_plan;
    bool m_again = false;
    bool m_json = false;
};

void BringVerb::declare(CLI::App& command) {
    m_csv.declare(command,
                  "Readings as CSV with a header, a time and a temperature column; or a firing as JSON, "
                  "which export writes");
    addBook(command, m_book);
    command.add_option("--kiln", m_kiln, "The kiln's name in the book (a JSON file says its own)")
        ->type_name("NAME");
    command.add_option("--title", m_title,
                       "What to call the firing (the file's name, or what the JSON says)");
    command.add_option("--plan", m_plan, "The plan that it followed, a JSON file")->type_name("FILE");
    command.add_flag("--again", m_again, "Even when the book has the same firing already");
    addJson(command, m_json);
    command.footer(
        "A CSV has a header. Its time is ISO 8601 (with a zone, or in that of --zone) or counted from "
        "--began; its\n"
        "temperatures say °C or °F in their header or by --unit or --take. Comma, semicolon or tab; decimal "
        "point or\n"
        "comma. One line that makes no sense, and nothing is brought. A JSON file comes whole: looks, notes, "
        "ware,\n"
        "photos, cards. A firing that the book has already, by its readings, is named and left alone.\n"
        "\n"
        "    ringhold bring night.csv --book studio.ringhold --kiln Heron --zone Europe/Lisbon\n"
        "    ringhold bring log.csv --book studio.ringhold --kiln Heron --time when --time-unit min\n"
        "        --began 2026-03-01T06:30 --take 'chamber=F' --take 'mains=V' --column chamber");
}

Result<BroughtAs> BringVerb::as() const {
    BroughtAs as{.kiln = m_kiln, .title = m_title};
    if (m_plan.empty())
        return as;
    auto plan = readPlan(m_plan);
    if (!plan)
        return plan.error();
    as.plan = std::move(*plan);
    return as;
}

Result<BroughtFile> BringVerb::read() const {
    const auto options = m_csv.options();
    if (!options)
        return options.error();
    const auto said = as();
    if (!said)
        return said.error();
    auto bytes = readFile(m_csv.file());
    if (!bytes)
        return bytes.error();
    if (m_kiln.empty() && !looksLikeJson(*bytes))
        return Error{ErrorKind::badInput, "--kiln is required"};
    return broughtFrom(std::move(*bytes), m_csv.file(), *options, *said);
}

void BringVerb::tellTaken(std::ostream& out, const TakenFiring& taken, const BroughtFile& brought) const {
    const auto& record = brought.record;
    if (m_json) {
        print(out, {{"firing", static_cast<std::int64_t>(taken.firing)},
                    {"readings", record.readings.size()},
                    {"skipped", brought.rowsSkipped}});
        return;
    }
    out << fmt::format(
        "Firing {}: {} readings, {} to {}; {} rows skipped\n", static_cast<std::int64_t>(taken.firing),
        record.readings.size(), dateAndTime(record.firing.began),
        dateAndTime(record.firing.ended.value_or(taken.endedWith.value_or(record.firing.began))),
        brought.rowsSkipped);
    for (const auto& header : brought.notTaken)
        out << "    column \"" << header << "\" holds nothing that a book keeps\n";
    for (const auto& card : taken.keptCards)
        out << "    the glaze card \"" << card << "\" is in the book already and stays as it is\n";
}

void BringVerb::tellKnown(std::ostream& out, const FiringSummary& known) const {
    if (m_json) {
        print(out, {{"firing", static_cast<std::int64_t>(known.id)},
                    {"readings", 0},
                    {"skipped", 0},
                    {"already", true}});
        return;
    }
    out << fmt::format("Nothing brought: it is firing {} already, \"{}\" in {}, {}; --again brings it once "
                       "more\n",
                       static_cast<std::int64_t>(known.id), known.title, known.kilnName,
                       dateAndTime(known.began));
}

Status BringVerb::run(Console& console) {
    const auto brought = read();
    if (!brought)
        return brought.error();
    const auto book = Book::open(m_book, Access::create);
    if (!book)
        return book.error();
    if (!m_again) {
        const auto known = sameFiring(*book, brought->record);
        if (!known)
            return known.error();
        if (*known) {
            tellKnown(console.out, **known);
            return {};
        }
    }
    const auto taken = takeIn(*book, brought->record);
    if (!taken)
        return taken.error();
    tellTaken(console.out, *taken, *brought);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeBringVerb() {
    return std::make_unique<BringVerb>();
}

} // namespace ringhold
