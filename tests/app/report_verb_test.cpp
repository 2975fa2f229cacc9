#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"
#include "tests/ui/report/pdf_tools.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::HasSubstr;

class ReportVerb : public testing::Test {
  protected:
    ReportVerb() {
        std::string csv = "time,probe_C\n";
        for (int minute = 0; minute < 60; ++minute)
            csv += "2026-03-01T20:" + std::string(minute < 10 ? "0" : "") + std::to_string(minute) + ":00Z," +
                   std::to_string(1000 + minute) + "\n";
        const auto file = m_folder.with("past.csv", csv).string();
        EXPECT_EQ(ringholdRuns({"bring", file, "--book", m_book, "--kiln", "Heron", "--title", "Tall vases"})
                      .status,
                  0);
    }
    Ran report(const std::vector<std::string>& more) const {
        std::vector<std::string> arguments{"report", "--book", m_book, "--zone", "Europe/Paris"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return ringholdRuns(arguments);
    }
    std::string pdf() const { return (m_folder / "out.pdf").string(); }
    test::SeenPdf seen() const {
        return test::SeenPdf(QByteArray::fromStdString(ScratchFolder::bytesOf(pdf())));
    }

    const ScratchFolder m_folder;
    const std::string m_book = (m_folder / "notebook.ringhold").string();
};

TEST_F(ReportVerb, WritesAPdfWithoutADisplay) {
    const auto ran = report({"--firing", "1", "--pdf", pdf()});
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.err, ""); // not a word of Qt's either
    EXPECT_THAT(ran.out, HasSubstr("1 page"));
    const auto text = seen().text();
    EXPECT_TRUE(text.contains(QStringLiteral("Firing 1, Heron")));
    EXPECT_TRUE(text.contains(QStringLiteral("Tall vases")));
    EXPECT_TRUE(text.contains(QStringLiteral("Sunday 1 March 2026, 21:00 to 21:59 CET")))
        << text.toStdString();
    // the last reading, 1059 °C, has none after it that says it is no spike
    EXPECT_TRUE(text.contains(QStringLiteral("1058 °C"))) << text.toStdString();
    EXPECT_TRUE(seen().info().contains(QStringLiteral("(A4)")));
}

TEST_F(ReportVerb, TakesLetterAndFahrenheit) {
    ASSERT_EQ(report({"--firing", "1", "--pdf", pdf(), "--paper", "letter", "--fahrenheit"}).status, 0);
    EXPECT_TRUE(seen().info().contains(QStringLiteral("(letter)")));
    EXPECT_TRUE(seen().text().contains(QStringLiteral("1936 °F"))); // 1058 °C
}

TEST_F(ReportVerb, RefusesWhatIsNotThere) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"--firing", "9", "--pdf", pdf()},
          {"--firing", "1", "--pdf", pdf(), "--paper", "foolscap"},
          {"--firing", "one", "--pdf", pdf()},
          {"--firing", "1", "--pdf", pdf(), "--zone", "Nowhere/Atall"},
          {"--firing", "1"}}) {
        const auto ran = report(arguments);
        EXPECT_EQ(ran.status, 2) << arguments.back();
        EXPECT_EQ(ran.errorLines(), 1) << ran.err;
        EXPECT_FALSE(std::filesystem::exists(pdf()));
    }
}

TEST_F(ReportVerb, LeavesAnOldFileWhenTheDiskIsFull) {
    const auto ran = report({"--firing", "1", "--pdf", "/dev/full"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr("/dev/full"));
    EXPECT_EQ(report({"--firing", "1", "--pdf", "/nowhere/out.pdf"}).status, 1);
}

} // namespace
} // namespace ringhold
