#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "core/book/book.h"
#include "core/exchange/stamp.h"
#include "core/report/book_report.h"
#include "ui/report/report_layout.h"
#include "ui/report/report_pdf.h"

#include <CLI/CLI.hpp>
#include <QGuiApplication>
#include <fmt/format.h>

#include <clocale>

namespace ringhold {

namespace {

/// A firing's report as a PDF.
class ReportVerb final : public Verb {
  public:
    std::string name() const override { return "report"; }
    std::string summary() const override { return "A firing's report as a PDF"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<ReportContent> content(const std::string& zone) const;

    std::string m_book;
    std::int64_t m_firing = 0;
    std::string m_pdf;
    std::string m_paper = "a4";
    std::string m_zone;
    bool m_fahrenheit = false;
};

/// Fonts need an application; this one has no display and shows nothing.
class OffscreenFonts {
  public:
    OffscreenFonts() {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        m_application.emplace(m_count, m_arguments);
        std::setlocale(LC_NUMERIC, "C"); // which Qt has set to the computer's
    }

  private:
    int m_count = 1;
    char m_name[9] = "ringhold";
    char* m_arguments[2] = {m_name, nullptr};
    std::optional<QGuiApplication> m_application;
};

void ReportVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    command.add_option("--firing", m_firing, "Its number, as list tells")->required();
    command.add_option("--pdf", m_pdf, "The file to write")->type_name("OUT")->required();
    command.add_option("--paper", m_paper, "a4 or letter (a4)");
    command.add_option("--zone", m_zone, "Time zone of the times (this computer's)");
    command.add_flag("--fahrenheit", m_fahrenheit, "Temperatures in °F");
}

Result<ReportContent> ReportVerb::content(const std::string& zone) const {
    const auto book = Book::open(m_book, Access::read);
    if (!book)
        return book.error();
    const auto scale = m_fahrenheit ? TemperatureScale::fahrenheit : TemperatureScale::celsius;
    return reportFromBook(*book, FiringId{m_firing}, {scale, zone});
}

Status ReportVerb::run(Console& console) {
    const auto zone = m_zone.empty() ? localZone() : m_zone;
    if (const auto known = CivilZone::named(zone); !known)
        return known.error();
    const auto paper = paperNamed(QString::fromStdString(m_paper));
    if (!paper)
        return Error{ErrorKind::badInput, "there is no paper \"" + m_paper + "\": a4 or letter"};
    const auto reported = content(zone);
    if (!reported)
        return reported.error();
    const OffscreenFonts fonts;
    const auto document = layOutReport(*reported, *paper);
    if (const auto written = writePdf(document, m_pdf); !written)
        return written.error();
    console.out << fmt::format("Firing {} is reported on {} {} in {}\n", m_firing, document.pageCount(),
                               document.pageCount() == 1 ? "page" : "pages", m_pdf);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeReportVerb() {
    return std::make_unique<ReportVerb>();
}

} // namespace ringhold
