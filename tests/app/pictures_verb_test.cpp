#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <QImage>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

namespace fs = std::filesystem;

TEST(PicturesVerb, PicturesEveryPageAndLeavesTheBookAsItIs) {
    const ScratchFolder folder;
    const auto book = (folder / "notebook.ringhold").string();
    const auto csv =
        folder.with("past.csv", "time,probe_C\n2026-03-01T20:00:00Z,1000\n2026-03-01T20:10:00Z,1010\n");
    ASSERT_EQ(ringholdRuns({"bring", csv.string(), "--book", book, "--kiln", "Heron"}).status, 0);
    const auto before = ringholdRuns({"list", "--book", book, "--json"}).out;
    const auto to = (folder / "pictures").string();
    const auto ran = ringholdRuns({"pictures", "--book", book, "--to", to});
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, testing::HasSubstr(to));
    for (const char* page : {"firing", "spyhole", "instruments", "past-log", "report"})
        for (const char* theme : {"paper", "ember"}) {
            const QImage picture(QString::fromStdString(to + "/" + page + "-" + theme + ".png"));
            EXPECT_EQ(picture.size(), QSize(1280, 800)) << page << ' ' << theme;
        }
    EXPECT_GE(std::distance(fs::directory_iterator(to), {}), 16);
    EXPECT_EQ(ringholdRuns({"list", "--book", book, "--json"}).out, before);
}

TEST(PicturesVerb, RefusesABookThatIsNotThere) {
    const ScratchFolder folder;
    const auto ran = ringholdRuns(
        {"pictures", "--book", (folder / "no.ringhold").string(), "--to", (folder / "p").string()});
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.errorLines(), 1);
}

} // namespace
} // namespace ringhold
