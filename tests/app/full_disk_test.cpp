// The real program on a disk that is full, or turns full, or may not be written: small disks of their own, in
// a mount namespace that ends with the test.
#include "tests/app/curve_csv.h"
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"
#include "tests/support/places.h"

#include <QProcess>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace ringhold {
namespace {

using testing::HasSubstr;

class ProgramOnAFullDisk : public testing::Test {
  protected:
    ProgramOnAFullDisk() { std::filesystem::create_directory(m_folder / "disk"); }

    void SetUp() override {
        if (shell("true") != 0)
            GTEST_SKIP() << "no mount namespaces here, so there is no disk to fill";
    }

    /// Runs shell lines with $disk (a tmpfs of 650 kB), $folder and $ringhold set; gives their exit status.
    int shell(const std::string& lines) const {
        QProcess process;
        auto environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("folder"), QString::fromStdString(m_folder.path().string()));
        environment.insert(QStringLiteral("disk"), QString::fromStdString((m_folder / "disk").string()));
        environment.insert(QStringLiteral("ringhold"), QString::fromStdString(test::programFile().string()));
        process.setProcessEnvironment(environment);
        const auto script = "mount -t tmpfs -o size=650k disk \"$disk\" || exit 77\n" + lines;
        process.start(QStringLiteral("unshare"),
                      {QStringLiteral("--map-root-user"), QStringLiteral("--mount"), QStringLiteral("sh"),
                       QStringLiteral("-c"), QString::fromStdString(script)});
        process.waitForFinished(60'000);
        return process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1;
    }
    std::string file(const std::string& name) const { return ScratchFolder::bytesOf(m_folder / name); }
    static long linesIn(const std::string& text) { return std::count(text.begin(), text.end(), '\n'); }

    const ScratchFolder m_folder;
};

TEST_F(ProgramOnAFullDisk, LogSaysSoOnceAndKeepsWhatItAcknowledged) {
    CurveCsv csv(20);
    for (int i = 0; i < 20; ++i)
        csv.to(1000, 500).to(20, 500);
    m_folder.with("long.csv", csv.text());
    ASSERT_EQ(shell(R"(
        "$ringhold" log --book "$disk/b.ringhold" --kiln big --source "replay:$folder/long.csv?speed=1000000" \
            >"$folder/out" 2>"$folder/err"
        echo $? >"$folder/status"
        "$ringhold" export --book "$disk/b.ringhold" --firing 1 --csv "$folder/kept.csv")"),
              0);
    EXPECT_EQ(file("status"), "1\n");
    EXPECT_EQ(linesIn(file("err")), 1) << file("err");
    EXPECT_THAT(file("err"), HasSubstr("b.ringhold"));
    EXPECT_GT(linesIn(file("out")), 100);
    EXPECT_LT(linesIn(file("out")), 20'001);
    const auto kept = file("kept.csv");
    std::istringstream printed(file("out"));
    for (std::string line; std::getline(printed, line);)
        EXPECT_THAT(kept, HasSubstr(line.substr(0, line.find('\t')))) << line;
}

TEST_F(ProgramOnAFullDisk, BringLeavesTheBookAsItWas) {
    CurveCsv csv(20);
    for (int i = 0; i < 20; ++i)
        csv.to(1000, 500).to(20, 500);
    m_folder.with("long.csv", csv.text());
    m_folder.with("short.csv", CurveCsv(20).to(100, 60).text());
    ASSERT_EQ(shell(R"(
        "$ringhold" bring "$folder/short.csv" --book "$disk/b.ringhold" --kiln big || exit 1
        "$ringhold" bring "$folder/long.csv" --book "$disk/b.ringhold" --kiln big >"$folder/out" 2>"$folder/err"
        echo $? >"$folder/status"
        "$ringhold" list --book "$disk/b.ringhold" --json >"$folder/list")"),
              0);
    EXPECT_EQ(file("status"), "1\n");
    EXPECT_EQ(file("out"), "");
    EXPECT_EQ(linesIn(file("err")), 1) << file("err");
    const auto list = nlohmann::json::parse(file("list"), nullptr, false);
    ASSERT_EQ(list["firings"].size(), 1u);
    EXPECT_EQ(list["firings"][0]["readings"], 61);
}

TEST_F(ProgramOnAFullDisk, WhatMayOnlyBeReadCanBeReadButNotWritten) {
    m_folder.with("short.csv", CurveCsv(20).to(100, 60).text());
    ASSERT_EQ(shell(R"(
        "$ringhold" bring "$folder/short.csv" --book "$disk/b.ringhold" --kiln big || exit 1
        mount -o remount,ro "$disk" || exit 1
        "$ringhold" list --book "$disk/b.ringhold" || exit 1
        for verb in "bring $folder/short.csv" "log --source practice:" ; do
            "$ringhold" $verb --book "$disk/b.ringhold" --kiln big >>"$folder/out" 2>>"$folder/err"
            echo $? >>"$folder/status"
        done
        "$ringhold" export --book "$disk/b.ringhold" --firing 1 --csv "$disk/x.csv" >>"$folder/out" 2>>"$folder/err"
        echo $? >>"$folder/status")"),
              0);
    EXPECT_EQ(file("status"), "1\n1\n1\n");
    EXPECT_EQ(file("out"), "");
    EXPECT_EQ(linesIn(file("err")), 3) << file("err");
}

} // namespace
} // namespace ringhold
