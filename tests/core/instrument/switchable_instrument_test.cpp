#include "core/instrument/replay_instrument.h"
#include "core/instrument/switchable_instrument.h"
#include "tests/core/instrument/heard.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

constexpr Instant start{};

std::unique_ptr<Instrument> replay(double celsius, const char* title) {
    std::vector<Sample> samples;
    for (int i = 0; i < 3; ++i)
        samples.push_back({start + std::chrono::seconds(i), "", Quantity::temperature, celsius + i});
    return std::make_unique<ReplayInstrument>(std::move(samples), 1.0, title);
}

TEST(SwitchableInstrument, GoesOverToAnotherAndBackToNone) {
    Heard heard;
    SwitchableInstrument instrument(nullptr);
    ASSERT_TRUE(instrument.open(heard).ok());
    EXPECT_EQ(instrument.description(), "");
    EXPECT_EQ(instrument.advance(start), start + std::chrono::seconds(1)); // there may be one by then
    ASSERT_TRUE(instrument.use(replay(100, "first")).ok());
    instrument.advance(start);
    ASSERT_TRUE(instrument.use(replay(200, "second")).ok());
    EXPECT_NE(instrument.description().find("second"), std::string::npos);
    instrument.advance(start);
    ASSERT_EQ(heard.samples.size(), 2u);
    EXPECT_EQ(heard.samples[0].value, 100);
    EXPECT_EQ(heard.samples[1].value, 200);
    ASSERT_TRUE(instrument.use(nullptr).ok());
    instrument.advance(start + std::chrono::seconds(9));
    EXPECT_EQ(heard.samples.size(), 2u);
    EXPECT_EQ(heard.links.back(), LinkState::waiting);
}

TEST(SwitchableInstrument, KeepsWhatItHasWhenTheOtherCannotBeOpened) {
    Heard heard;
    SwitchableInstrument instrument(replay(100, "first"));
    ASSERT_TRUE(instrument.open(heard).ok());
    const auto empty =
        instrument.use(std::make_unique<ReplayInstrument>(std::vector<Sample>(), 1.0, "empty"));
    ASSERT_FALSE(empty.ok());
    EXPECT_EQ(empty.error().kind, ErrorKind::badInput);
    instrument.advance(start);
    EXPECT_EQ(heard.samples.size(), 1u);
}

TEST(SwitchableInstrument, SaysNothingAfterItWasClosed) {
    Heard heard;
    SwitchableInstrument instrument(replay(100, "first"));
    ASSERT_TRUE(instrument.open(heard).ok());
    instrument.close();
    ASSERT_TRUE(instrument.use(replay(200, "second")).ok());
    EXPECT_FALSE(instrument.advance(start));
    EXPECT_TRUE(heard.samples.empty());
}

} // namespace
} // namespace ringhold
