#include "app/verbs/csv_arguments.h"
#include "app/verbs/kiln_book.h"
#include "app/verbs/options.h"
#include "app/verbs/output.h"
#include "app/verbs/verb_list.h"
#include "core/book/transaction.h"
#include "core/plan/plan_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace ringhold {

namespace {

/// Brings a past firing from a CSV file into the book.
class BringVerb final : public Verb {
  public:
    std::string name() const override { return "bring"; }
    std::string summary() const override { return "Bring a past firing from a CSV file into a book"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<std::optional<Plan>> plan() const;
    Result<FiringId> write(const CsvReadings& readings, const std::optional<Plan>& plan) const;
    Status writeReadings(BookWriter& writer, FiringId firing, const CsvReadings& readings) const;
    void tell(std::ostream& out, FiringId firing, const CsvReadings& readings) const;

    CsvArguments m_csv;
    std::string m_book;
    std::string m_kiln;
    std::string m_title;
    std::string m_plan;
    bool m_json = false;
};

std::size_t countOf(const CsvReadings& readings) {
    std::size_t count = 0;
    for (const auto& channel : readings.channels)
        count += channel.values.size();
    return count;
}

/// From the first reading of any channel to the last.
std::pair<Instant, Instant> spanOf(const CsvReadings& readings) {
    auto span = std::pair(readings.control().values.front().at, readings.control().values.back().at);
    for (const auto& channel : readings.channels) {
        if (channel.values.empty())
            continue;
        span.first = std::min(span.first, channel.values.front().at);
        span.second = std::max(span.second, channel.values.back().at);
    }
    return span;
}

void BringVerb::declare(CLI::App& command) {
    m_csv.declare(command);
    addBook(command, m_book);
    addKiln(command, m_kiln);
    command.add_option("--title", m_title, "What to call the firing (the file's name)");
    command.add_option("--plan", m_plan, "The plan that it followed, a JSON file")->type_name("FILE");
    addJson(command, m_json);
}

Result<std::optional<Plan>> BringVerb::plan() const {
    if (m_plan.empty())
        return std::optional<Plan>();
    auto plan = readPlan(m_plan);
    if (!plan)
        return plan.error();
    return std::optional(std::move(*plan));
}

Status BringVerb::writeReadings(BookWriter& writer, FiringId firing, const CsvReadings& readings) const {
    for (const auto& column : readings.channels) {
        const auto channel = writer.add(Channel{
            .id = {}, .firing = firing, .quantity = column.quantity, .label = column.label, .probe = {}});
        if (!channel)
            return channel.error();
        std::vector<Reading> all;
        all.reserve(column.values.size());
        for (const auto& [at, value] : column.values)
            all.push_back({.channel = *channel, .at = at, .value = value});
        if (const auto added = writer.add(all); !added)
            return added.error();
    }
    return {};
}

Result<FiringId> BringVerb::write(const CsvReadings& readings, const std::optional<Plan>& plan) const {
    const auto book = Book::open(m_book, Access::create);
    if (!book)
        return book.error();
    auto transaction = WriteTransaction::begin(*book);
    if (!transaction)
        return transaction.error();
    BookWriter writer(*book);
    const auto kiln = kilnFor(*book, m_kiln);
    if (!kiln)
        return kiln.error();
    const auto [began, ended] = spanOf(readings);
    const auto title = m_title.empty() ? std::filesystem::path(m_csv.file()).stem().string() : m_title;
    const auto firing = writer.add(Firing{.id = {},
                                          .kiln = kiln->id,
                                          .title = title,
                                          .began = began,
                                          .ended = ended,
                                          .plan = plan,
                                          .modelJson = {}});
    if (!firing)
        return firing.error();
    if (const auto status = writeReadings(writer, *firing, readings); !status)
        return status.error();
    if (const auto status = transaction->commit(); !status)
        return status.error();
    return *firing;
}

void BringVerb::tell(std::ostream& out, FiringId firing, const CsvReadings& readings) const {
    if (m_json) {
        print(out, {{"firing", static_cast<std::int64_t>(firing)},
                    {"readings", countOf(readings)},
                    {"skipped", readings.skipped}});
        return;
    }
    const auto [began, ended] = spanOf(readings);
    out << fmt::format("Firing {}: {} readings, {} to {}; {} rows skipped\n",
                       static_cast<std::int64_t>(firing), countOf(readings), dateAndTime(began),
                       dateAndTime(ended), readings.skipped);
    for (const auto& header : readings.ignored)
        out << "    column \"" << header << "\" holds nothing that a book keeps\n";
}

Status BringVerb::run(Console& console) {
    const auto readings = m_csv.read();
    if (!readings)
        return readings.error();
    if (!readings->absolute)
        return Error{ErrorKind::badInput, "its times have no date; give --began", m_csv.file()};
    const auto followed = plan();
    if (!followed)
        return followed.error();
    const auto firing = write(*readings, *followed);
    if (!firing)
        return firing.error();
    tell(console.out, *firing, *readings);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeBringVerb() {
    return std::make_unique<BringVerb>();
}

} // namespace ringhold
