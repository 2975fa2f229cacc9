#include "app/instruments/follow_instrument.h"
#include "app/system_clock.h"
#include "tests/app/instruments/recording_listener.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

namespace ringhold {
namespace {

using testing::ElementsAre;

class FollowInstrumentTest : public testing::Test {
  protected:
    FollowInstrumentTest()
        : m_file(m_folder / "kiln.txt"),
          m_instrument(QString::fromStdString(m_file.string()), LineFormat{}, m_clock) {
        m_instrument.setRetryAfter(std::chrono::milliseconds(50));
    }
    void add(const std::string& text) { std::ofstream(m_file, std::ios::app) << text; }
    void open() { ASSERT_TRUE(m_instrument.open(m_heard).ok()); }

    const ScratchFolder m_folder;
    const std::filesystem::path m_file;
    const SystemClock m_clock;
    RecordingListener m_heard;
    FollowInstrument m_instrument;
};

TEST_F(FollowInstrumentTest, HearsWhatIsAddedAndNotWhatWasThere) {
    add("20\n21\n");
    open();
    add("22\n2");
    ASSERT_TRUE(m_heard.waitForSamples(1));
    add("3\n");
    ASSERT_TRUE(m_heard.waitForSamples(2));
    EXPECT_THAT(m_heard.values(), ElementsAre(22, 23));
}

TEST_F(FollowInstrumentTest, GuessesNothingFromTheRestOfALine) {
    add("20\n10");
    open();
    add("43\n1044\n");
    ASSERT_TRUE(m_heard.waitForSamples(1));
    EXPECT_THAT(m_heard.values(), ElementsAre(1044));
}

TEST_F(FollowInstrumentTest, BeginsAgainInAFileCutShort) {
    add("20\n21\n");
    open();
    add("22\n");
    ASSERT_TRUE(m_heard.waitForSamples(1));
    std::ofstream(m_file, std::ios::trunc) << "23\n";
    ASSERT_TRUE(m_heard.waitForSamples(2));
    EXPECT_THAT(m_heard.values(), ElementsAre(22, 23));
}

TEST_F(FollowInstrumentTest, BeginsAgainInAFileThatTookTheNameEvenIfItIsLonger) {
    add("20\n");
    open();
    std::filesystem::rename(m_file, m_folder / "kiln.old");
    add("30\n31\n32\n");
    ASSERT_TRUE(m_heard.waitForSamples(3));
    EXPECT_THAT(m_heard.values(), ElementsAre(30, 31, 32));
}

TEST_F(FollowInstrumentTest, WaitsForAFileThatIsNotThere) {
    open();
    EXPECT_THAT(m_heard.links, ElementsAre(LinkState::lost));
    add("40\n");
    ASSERT_TRUE(m_heard.waitForSamples(1));
    EXPECT_THAT(m_heard.values(), ElementsAre(40));
}

} // namespace
} // namespace ringhold
