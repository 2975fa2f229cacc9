#include "core/book/drawn_firing.h"
#include "core/firing/live_firing.h"
#include "core/learn/firing_energy.h"
#include "core/report/report_curves.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/record_fields.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <tuple>

namespace ringhold::test {
namespace {

Instant minute(double after) {
    return evening + durationFromMinutes(after);
}

/// A firing whose channels are mixed: by hand before the instruments, a dead probe, volts and duty, some
/// lines struck, some twice at one instant.
class DrawnFiringTest : public testing::Test {
  protected:
    DrawnFiringTest() {
        kiln.ratedPower = Power{9000};
        kiln.id = good(writer.add(kiln));
        firing.kiln = kiln.id;
        firing.id = good(writer.add(firing));
        channel(Quantity::temperature, byHandLabel, 7, Origin::hand);
        channel(Quantity::temperature, "dead", 0, Origin::instrument);
        const auto top = channel(Quantity::temperature, "top", 40, Origin::instrument);
        channel(Quantity::duty, "duty", 30, Origin::instrument);
        channel(Quantity::temperature, "floor", 35, Origin::instrument);
        channel(Quantity::lineVolts, "line", 30, Origin::instrument);
        add({{top, minute(5), 612.5, Origin::hand}, {top, minute(9), 1, Origin::hand, true}});
        good(writer.strikeReadings(top, minute(3), minute(3), minute(60)));
    }

    ChannelId channel(Quantity quantity, const std::string& label, int readings, Origin origin) {
        Channel made{{}, firing.id, quantity, label, {}};
        if (label == "top")
            made.probe = probe.id = good(writer.add(probeOf(label)));
        made.id = good(writer.add(made));
        std::vector<Reading> some;
        for (int i = 0; i < readings; ++i)
            some.push_back({made.id, minute(i), 20.5 + i + static_cast<double>(made.id), origin});
        add(some);
        return made.id;
    }

    void add(const std::vector<Reading>& readings) { EXPECT_EQ(good(writer.add(readings)), readings.size()); }

    Probe probeOf(const std::string& label) const {
        Probe made;
        made.kiln = kiln.id;
        made.label = label;
        return made;
    }

    BookFolder folder;
    Book book = bookAt(folder / "a.ringhold");
    BookWriter writer{book};
    BookReader reader{book};
    Kiln kiln = kilnCalled("Heron");
    Firing firing = firingFrom({}, "frost", evening);
    Probe probe;
};

std::vector<std::tuple<ChannelId, Instant, double, bool>> told(const std::vector<Reading>& readings) {
    std::vector<std::tuple<ChannelId, Instant, double, bool>> all;
    for (const auto& r : readings)
        all.emplace_back(r.channel, r.at, r.value, r.struck);
    return all;
}

std::vector<std::pair<Instant, double>> told(const Curve& curve) {
    std::vector<std::pair<Instant, double>> all;
    for (const auto& point : curve)
        all.emplace_back(point.at, point.temperature.celsius());
    return all;
}

/// Lines of one instant need not stand in the same order.
template <class T>
std::vector<T> sorted(std::vector<T> all) {
    std::ranges::sort(all);
    return all;
}

TEST_F(DrawnFiringTest, GivesExactlyWhatTheWholeReadingGives) {
    const auto whole = good(reader.whole(firing.id));
    const auto drawn = good(drawnFiring(book, firing.id));
    ASSERT_TRUE(drawn.controlChannel);
    EXPECT_EQ(drawn.controlChannel, controlChannel(whole));
    EXPECT_EQ(drawn.probe->id, controlProbe(whole)->id);
    EXPECT_EQ(told(drawn.control), told(curveOf(whole, *drawn.controlChannel)));
    EXPECT_EQ(drawn.control.size(), 39u) << "one struck, one corrected";
    const auto others = otherCurves(whole);
    ASSERT_EQ(drawn.others.size(), others.size());
    ASSERT_EQ(others.size(), 2u);
    for (std::size_t i = 0; i < others.size(); ++i)
        EXPECT_EQ(told(drawn.others[i]), told(others[i].curve));
    const auto energy = electricityOf(whole);
    ASSERT_TRUE(energy);
    EXPECT_EQ(electricityOf(drawn.record)->energy, energy->energy);
    auto byHandOrPower = whole.readings;
    std::erase_if(byHandOrPower, [&](const Reading& r) {
        const auto of = std::ranges::find(whole.channels, r.channel, &Channel::id);
        return r.origin != Origin::hand && of->quantity == Quantity::temperature;
    });
    EXPECT_TRUE(std::ranges::is_sorted(drawn.record.readings, {}, &Reading::at));
    EXPECT_EQ(sorted(told(drawn.record.readings)), sorted(told(byHandOrPower)));
}

TEST_F(DrawnFiringTest, LeavesOutWhatIsNotAskedFor) {
    const auto whole = good(reader.whole(firing.id));
    const auto drawn = good(drawnFiring(book, firing.id, {.others = false, .power = false}));
    EXPECT_EQ(told(drawn.control), told(curveOf(whole, *controlChannel(whole))));
    EXPECT_TRUE(drawn.others.empty());
    EXPECT_EQ(drawn.record.readings.size(), 2u) << "typed into the control channel";
    EXPECT_FALSE(electricityOf(drawn.record));
}

TEST_F(DrawnFiringTest, HasTheReadingsByHandWhereNoInstrumentHasAny) {
    const auto other = good(writer.add(firingFrom(good(writer.add(kilnCalled("Wren"))), "by hand", evening)));
    Channel typed{{}, other, Quantity::temperature, byHandLabel, {}};
    typed.id = good(writer.add(typed));
    add({{typed.id, minute(0), 20, Origin::hand}, {typed.id, minute(60), 200, Origin::hand}});
    const auto drawn = good(drawnFiring(book, other, {.others = false, .power = false}));
    EXPECT_EQ(drawn.controlChannel, typed.id);
    EXPECT_EQ(drawn.control.size(), 2u);
    EXPECT_FALSE(drawn.probe);
}

TEST_F(DrawnFiringTest, HoldsEveryOtherLineOfTheFiring) {
    const auto sample = writeSample(book);
    auto whole = good(reader.whole(sample.firing.id));
    auto drawn = good(drawnFiring(book, sample.firing.id)).record;
    ASSERT_FALSE(whole.readings.empty());
    whole.readings.clear();
    drawn.readings.clear();
    eachPair(drawn, whole, [](const auto& found, const auto& wanted, const std::string& member) {
        expectSame(found, wanted, member);
    });
}

TEST_F(DrawnFiringTest, SaysWhichFiringIsNotThere) {
    const auto drawn = drawnFiring(book, FiringId{999});
    ASSERT_FALSE(drawn);
    EXPECT_EQ(drawn.error().kind, ErrorKind::notFound);
}

} // namespace
} // namespace ringhold::test
