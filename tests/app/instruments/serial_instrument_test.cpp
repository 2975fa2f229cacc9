#include "app/instruments/serial_instrument.h"
#include "app/system_clock.h"
#include "tests/app/instruments/recording_listener.h"
#include "tests/app/pseudo_terminal.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::ElementsAre;

class SerialInstrumentTest : public testing::Test {
  protected:
    std::unique_ptr<SerialInstrument> opened(const std::string& device) {
        SerialSettings settings;
        settings.device = QString::fromStdString(device);
        auto instrument = std::make_unique<SerialInstrument>(settings, LineFormat{}, m_clock);
        instrument->setRetryAfter(std::chrono::milliseconds(50));
        EXPECT_TRUE(instrument->open(m_heard).ok());
        return instrument;
    }

    SystemClock m_clock;
    RecordingListener m_heard;
};

TEST_F(SerialInstrumentTest, HearsLinesInPieces) {
    PseudoTerminal terminal;
    const auto instrument = opened(terminal.device());
    EXPECT_THAT(m_heard.links, ElementsAre(LinkState::waiting));
    QTest::qWait(250); // a silent line: the next byte begins a line
    const Instant before = m_clock.now();
    terminal.send("1043");
    QTest::qWait(20);
    terminal.send(".2\r\nrubbish\n1044\n");
    ASSERT_TRUE(m_heard.waitForSamples(2));
    EXPECT_THAT(m_heard.values(), ElementsAre(1043.2, 1044));
    EXPECT_GE(m_heard.samples[0].at, before);
    // lines that come at once are told a millisecond apart
    EXPECT_LE(m_heard.samples[1].at, m_clock.now() + std::chrono::milliseconds(10));
    EXPECT_EQ(m_heard.links.back(), LinkState::connected);
    EXPECT_THAT(m_heard.lines, testing::Contains(std::pair<std::string, bool>("rubbish", false)));
}

TEST_F(SerialInstrumentTest, GuessesNothingFromTheRestOfALine) {
    PseudoTerminal terminal;
    const auto instrument = opened(terminal.device());
    terminal.send("43.2\n1044\n"); // the end of "1043.2", perhaps
    ASSERT_TRUE(m_heard.waitForSamples(1));
    EXPECT_THAT(m_heard.values(), ElementsAre(1044));
    EXPECT_THAT(m_heard.lines.front(), testing::Pair("43.2", false));
}

TEST_F(SerialInstrumentTest, ComesBackAfterTheCableWasPulled) {
    const ScratchFolder folder;
    const auto port = folder / "port";
    auto terminal = std::make_unique<PseudoTerminal>();
    std::filesystem::create_symlink(terminal->device(), port);
    const auto instrument = opened(port);
    QTest::qWait(250);
    terminal->send("1043\n");
    ASSERT_TRUE(m_heard.waitForSamples(1));
    terminal->unplug();
    ASSERT_TRUE(m_heard.waitForLink(LinkState::lost));
    QTest::qWait(150); // tries in vain meanwhile, and says so once only
    EXPECT_EQ(std::count(m_heard.links.begin(), m_heard.links.end(), LinkState::lost), 2);

    PseudoTerminal again;
    std::filesystem::remove(port);
    std::filesystem::create_symlink(again.device(), port);
    ASSERT_TRUE(m_heard.waitForLink(LinkState::waiting));
    QTest::qWait(250);
    again.send("1044\n");
    ASSERT_TRUE(m_heard.waitForSamples(2));
    EXPECT_THAT(m_heard.values(), ElementsAre(1043, 1044));
}

TEST_F(SerialInstrumentTest, WaitsForAPortThatIsNotThere) {
    const auto instrument = opened("/dev/ringhold-no-such-port");
    EXPECT_THAT(m_heard.links, ElementsAre(LinkState::lost));
    instrument->close();
    QTest::qWait(120);
    EXPECT_EQ(m_heard.links.size(), 1u); // nothing after close()
}

} // namespace
} // namespace ringhold
