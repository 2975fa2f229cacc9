#include "tests/app/program.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(EmfVerb, GivesMillivoltsWithTheColdJunctionInIt) {
    // NIST ITS-90 tables, type K: 51.000 mV at 1260 °C; 1.122 mV at 28 °C (worked out from the same
    // polynomial).
    const auto ran = ringholdRuns({"emf", "--type", "K", "--celsius", "1260", "--cold", "28", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto json = ran.json();
    EXPECT_EQ(json["type"], "K");
    EXPECT_NEAR(json["millivolts"], 51.000 - 1.122, 0.001);
    EXPECT_EQ(json["celsius"], 1260);
    EXPECT_EQ(json["cold_C"], 28);
    EXPECT_EQ(ran.err, "");
}

TEST(EmfVerb, GivesCelsiusAndTakesNegativeNumbers) {
    // NIST ITS-90 tables, type K: -5.891 mV at -200 °C (remembered, not seen).
    const auto ran = ringholdRuns({"emf", "--type", "k", "--millivolts", "-5.891", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_NEAR(ran.json()["celsius"], -200.0, 0.05);
    EXPECT_EQ(ran.json()["cold_C"], 0);
}

TEST(EmfVerb, SpeaksToPeople) {
    const auto ran = ringholdRuns({"emf", "--type", "S", "--celsius", "0"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.out, "type S: 0.00 °C reads 0.0000 mV on a meter whose terminals are at 0.0 °C\n");
}

} // namespace
} // namespace ringhold
