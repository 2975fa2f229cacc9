#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "core/book/book.h"
#include "core/book/reader.h"
#include "core/exchange/csv_export.h"
#include "core/exchange/firing_json.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace ringhold {

namespace {

/// Hands one firing on as a file.
class ExportVerb final : public Verb {
  public:
    std::string name() const override { return "export"; }
    std::string summary() const override { return "Write one firing as CSV or JSON"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    std::string m_book;
    std::int64_t m_firing = 0;
    std::string m_csv;
    std::string m_json;
};

void ExportVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    command.add_option("--firing", m_firing, "Its number, as list tells")->required();
    auto* to = command.add_option_group("to", "One of these");
    to->add_option("--csv", m_csv, "Its readings as CSV")->type_name("OUT");
    to->add_option("--json", m_json, "All of it as JSON")->type_name("OUT");
    to->require_option(1);
    command.footer("CSV has the readings that count, times in UTC, temperatures in °C. JSON has everything "
                   "that the book\n"
                   "knows of the firing, struck lines and photos too; bring takes either back.");
}

Status ExportVerb::run(Console& console) {
    const auto book = Book::open(m_book, Access::read);
    if (!book)
        return book.error();
    const auto firing = BookReader(*book).whole(FiringId{m_firing}, Pictures::with);
    if (!firing)
        return firing.error();
    const auto& target = m_csv.empty() ? m_json : m_csv;
    if (const auto status = m_csv.empty() ? writeFiring(m_json, *firing) : writeCsv(m_csv, *firing); !status)
        return status;
    console.out << fmt::format("Firing {} with {} readings is in {}\n", m_firing, firing->readings.size(),
                               target);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeExportVerb() {
    return std::make_unique<ExportVerb>();
}

} // namespace ringhold
