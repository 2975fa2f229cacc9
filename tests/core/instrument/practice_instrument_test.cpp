#include "core/instrument/practice_instrument.h"
#include "core/kiln/practice_firing.h"
#include "core/kiln/practice_potter.h"
#include "tests/core/instrument/heard.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

const Instant today(hours(500'000));

PracticeSettings climbing() {
    auto settings = drawnPracticeSettings(practicePlan(), 1);
    settings.plan.steps = {Climb{Temperature::fromCelsius(200), Rate::fromCelsiusPerHour(180)}};
    return settings;
}

TEST(PracticeInstrument, SendsProbeVoltsAndAmpsAtEachPeriod) {
    PracticeInstrument instrument(climbing(), 60);
    Heard heard;
    ASSERT_TRUE(instrument.open(heard).ok());
    EXPECT_EQ(instrument.advance(today), today + std::chrono::milliseconds(167)); // 10 s / 60, rounded up
    ASSERT_EQ(heard.samples.size(), 3U);
    instrument.advance(today + seconds(10)); // 600 s at the kiln
    ASSERT_EQ(heard.samples.size(), 3U * 61U);
    EXPECT_EQ(instrument.kilnTime(today + seconds(10)), today + seconds(600));
    for (std::size_t i = 0; i < heard.samples.size(); ++i) {
        const auto& sample = heard.samples[i];
        EXPECT_EQ(sample.at, today + static_cast<int>(i / 3) * seconds(10));
        const char* labels[] = {"probe", "volts", "amps"};
        const Quantity quantities[] = {Quantity::temperature, Quantity::lineVolts, Quantity::lineAmps};
        EXPECT_EQ(sample.label, labels[i % 3]);
        EXPECT_EQ(sample.quantity, quantities[i % 3]);
        EXPECT_TRUE(sample.value && std::isfinite(*sample.value));
    }
    EXPECT_NEAR(heard.samples[1].value.value(), 240, 3);
}

TEST(PracticeInstrument, EndsWithItsPlan) {
    PracticeInstrument instrument(climbing(), 1000, seconds(30));
    Heard heard;
    ASSERT_TRUE(instrument.open(heard).ok());
    EXPECT_EQ(instrument.description(), "practice kiln, seed 1, 1000 times as fast");
    int calls = 0;
    for (std::optional<Instant> due = today; due; due = instrument.advance(*due))
        ASSERT_LE(++calls, 1000);
    EXPECT_EQ(heard.links, (std::vector{LinkState::waiting, LinkState::connected, LinkState::ended}));
    EXPECT_NEAR(heard.samples[heard.samples.size() - 3].value.value(), 200, 4);
    EXPECT_EQ(instrument.advance(today + hours(100)), std::nullopt);
}

TEST(PracticeInstrument, CatchesUpInOneGoWhatManyCallsTell) {
    PracticeInstrument often(climbing(), 1);
    PracticeInstrument once(climbing(), 1);
    Heard ofOften;
    Heard ofOnce;
    ASSERT_TRUE(often.open(ofOften).ok());
    ASSERT_TRUE(once.open(ofOnce).ok());
    once.advance(today);
    for (int i = 0; i <= 1800; ++i)
        often.advance(today + i * seconds(1));
    once.advance(today + seconds(1800));
    ASSERT_EQ(ofOften.samples.size(), 3U * 181U);
    ASSERT_EQ(ofOnce.samples.size(), ofOften.samples.size());
    for (std::size_t i = 0; i < ofOnce.samples.size(); ++i) {
        ASSERT_EQ(ofOnce.samples[i].at, ofOften.samples[i].at);
        ASSERT_EQ(ofOnce.samples[i].value, ofOften.samples[i].value);
    }
}

TEST(PracticeInstrument, GoesSilentFreezesAndShowsAnOpenProbe) {
    auto settings = climbing();
    settings.faults = {{FaultKind::silence, minutes(5), minutes(5), 0},
                       {FaultKind::openProbe, minutes(20), minutes(5), 0},
                       {FaultKind::frozenValue, minutes(30), minutes(5), 0}};
    PracticeInstrument instrument(settings, 1);
    Heard heard;
    ASSERT_TRUE(instrument.open(heard).ok());
    instrument.advance(today);
    instrument.advance(today + minutes(40));
    int open = 0;
    int frozen = 0;
    std::optional<double> last;
    for (const auto& sample : heard.samples) {
        if (sample.label != "probe")
            continue;
        const auto age = sample.at - today;
        EXPECT_FALSE(age >= minutes(5) && age < minutes(10)) << "it should be silent";
        EXPECT_EQ(sample.value.has_value(), age < minutes(20) || age >= minutes(25));
        open += sample.value ? 0 : 1;
        frozen += sample.value == last ? 1 : 0;
        last = sample.value;
    }
    EXPECT_EQ(open, 30);
    EXPECT_GE(frozen, 29 + 28);
}

TEST(PracticeInstrument, APotterAtItsSpyholeEndsTheConeWait) {
    const auto plan = practicePlan();
    PracticeInstrument instrument(drawnPracticeSettings(plan, 5), 10'000);
    PracticePotter potter(*habitsFor(plan), 5);
    std::vector<PracticeLook> looks;
    Heard heard;
    heard.atEach = [&](const Sample& sample) {
        if (sample.label != "probe")
            return;
        const auto seen = potter.watch(sample.at, instrument.spyhole());
        looks.insert(looks.end(), seen.begin(), seen.end());
    };
    ASSERT_TRUE(instrument.open(heard).ok());
    for (std::optional<Instant> due = today; due; due = instrument.advance(*due)) {
    }
    ASSERT_TRUE(potter.sawFiringConeDown());
    ASSERT_FALSE(looks.empty());
    EXPECT_EQ(heard.links.back(), LinkState::ended);
    // From the look on, the kiln falls without power to the growth temperature.
    double after_C = 0;
    for (const auto& sample : heard.samples)
        if (sample.label == "probe" && sample.at == looks.back().at + minutes(15))
            after_C = sample.value.value();
    EXPECT_GT(after_C, 1080);
    EXPECT_LT(after_C, 1180);
}

TEST(PracticeInstrument, RefusesWhatCanNeverWork) {
    Heard heard;
    auto noPlan = climbing();
    noPlan.plan.steps.clear();
    EXPECT_EQ(PracticeInstrument(noPlan, 1).open(heard).error().kind, ErrorKind::badInput);
    EXPECT_EQ(PracticeInstrument(climbing(), 0).open(heard).error().kind, ErrorKind::badInput);
    EXPECT_EQ(PracticeInstrument(climbing(), 1, seconds(0)).open(heard).error().kind, ErrorKind::badInput);
    EXPECT_TRUE(heard.links.empty());
}

} // namespace
} // namespace ringhold
