#include "core/thermocouple/reference_function.h"
#include "core/thermocouple/thermocouple.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <limits>
#include <numeric>
#include <sstream>
#include <vector>

namespace ringhold {
namespace {

using enum ThermocoupleType;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

Temperature celsius(double t) {
    return Temperature::fromCelsius(t);
}

/// Mean slope over 1 °C around t, within the range.
double slope_mV_per_C(ThermocoupleType type, double t) {
    const auto range = definedRange(type);
    const auto low = std::max(range.low, celsius(t - 0.5));
    const auto high = std::min(range.high, celsius(t + 0.5));
    return (emf(type, high)->millivolts - emf(type, low)->millivolts) / (high - low).celsius();
}

TEST(ThermocoupleTypes, AreNamedByOneLetter) {
    for (const auto type : {B, E, J, K, N, R, S, T})
        EXPECT_EQ(thermocoupleTypeNamed(name(type)), type);
    EXPECT_EQ(name(N), "N");
    EXPECT_EQ(thermocoupleTypeNamed("s"), S);
    for (const char* text : {"", "X", "KK", "K ", "type K"})
        EXPECT_FALSE(thermocoupleTypeNamed(text)) << text;
}

// Published points -----------------------------------------------------------------------------------------

struct Point {
    ThermocoupleType type;
    double temperature_C;
    double emf_mV;
};

/// Lines "K,100,4.096"; comments and the header are passed over, anything else is a failure.
std::vector<Point> pointsOf(const std::string& file) {
    std::vector<Point> points;
    std::ifstream in(test::sourceFolder() / "tests/reference" / file);
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with('#') || line.starts_with("type,"))
            continue;
        std::istringstream cells(line);
        std::string type;
        char comma = 0;
        Point point{};
        std::getline(cells, type, ',') >> point.temperature_C >> comma >> point.emf_mV;
        EXPECT_TRUE(cells && thermocoupleTypeNamed(type)) << line;
        point.type = thermocoupleTypeNamed(type).value_or(K);
        points.push_back(point);
    }
    return points;
}

struct PointFile {
    const char* name;
    std::size_t points;
};

class ThermocouplePoints : public testing::TestWithParam<PointFile> {};

TEST_P(ThermocouplePoints, AreMetForward) {
    const auto points = pointsOf(GetParam().name);
    ASSERT_EQ(points.size(), GetParam().points);
    for (const auto& p : points) {
        const auto found = emf(p.type, celsius(p.temperature_C));
        ASSERT_TRUE(found.ok()) << found.error().what;
        EXPECT_NEAR(found->millivolts, p.emf_mV, 0.0006) << name(p.type) << ' ' << p.temperature_C;
    }
}

// As near as an emf rounded to three decimals can tell: 0.013 °C for K, 0.05 °C for S at 1000 °C.
TEST_P(ThermocouplePoints, AreMetBackward) {
    int tried = 0;
    for (const auto& p : pointsOf(GetParam().name)) {
        const auto range = readableRange(p.type);
        if (celsius(p.temperature_C) <= range.low || celsius(p.temperature_C) >= range.high)
            continue; // rounding may put the emf outside the range
        const auto found = temperature(p.type, Millivolts{p.emf_mV});
        ASSERT_TRUE(found.ok()) << found.error().what;
        EXPECT_NEAR(found->celsius(), p.temperature_C, 0.00051 / slope_mV_per_C(p.type, p.temperature_C))
            << name(p.type) << ' ' << p.temperature_C;
        ++tried;
    }
    EXPECT_GT(tried, 30);
}

// Source: NIST Standard Reference Database 60, the tables of NIST Monograph 175.
INSTANTIATE_TEST_SUITE_P(Nist, ThermocouplePoints,
                         testing::Values(PointFile{"its90_points.csv", 36},
                                         PointFile{"its90_points_more.csv", 95}));

// The functions themselves ---------------------------------------------------------------------------------

class EveryThermocouple : public testing::TestWithParam<ThermocoupleType> {};

TEST_P(EveryThermocouple, ComesBackFromItsEmf) {
    const auto range = readableRange(GetParam());
    const double low_C = range.low.celsius();
    const double high_C = range.high.celsius();
    constexpr int steps = 20'000;
    double worst_C = 0;
    for (int i = 0; i <= steps; ++i) {
        const auto t = celsius(std::lerp(low_C, high_C, static_cast<double>(i) / steps));
        const auto back = temperature(GetParam(), *emf(GetParam(), t));
        ASSERT_TRUE(back.ok()) << t.celsius() << ": " << back.error().what;
        worst_C = std::max(worst_C, std::abs((*back - t).celsius()));
    }
    EXPECT_LT(worst_C, 1e-6);
}

TEST_P(EveryThermocouple, RisesOverTheReadableRange) {
    const auto range = readableRange(GetParam());
    double last_mV = -infinity;
    for (double t = range.low.celsius(); t <= range.high.celsius(); t += 0.1) {
        const double now_mV = emf(GetParam(), celsius(t))->millivolts;
        ASSERT_GT(now_mV, last_mV) << t;
        last_mV = now_mV;
    }
    EXPECT_GT(last_mV, 10);
}

// The monograph's pieces meet to the last digits printed, which a mistyped coefficient would spoil.
TEST_P(EveryThermocouple, HasPiecesThatMeet) {
    const auto pieces = referencePieces(GetParam());
    ASSERT_GE(pieces.size(), 2u);
    for (std::size_t i = 1; i < pieces.size(); ++i) {
        const double joint_C = pieces[i].low_C;
        EXPECT_EQ(pieces[i - 1].high_C, joint_C);
        EXPECT_NEAR(evaluate(pieces[i - 1], joint_C).emf_mV, evaluate(pieces[i], joint_C).emf_mV, 1e-7);
    }
}

TEST_P(EveryThermocouple, HasTheSlopeOfItsEmf) {
    for (const auto& piece : referencePieces(GetParam())) {
        const double t = std::midpoint(piece.low_C, piece.high_C);
        const double rise = evaluate(piece, t + 0.01).emf_mV - evaluate(piece, t - 0.01).emf_mV;
        EXPECT_NEAR(evaluate(piece, t).slope_mV_per_C, rise / 0.02, 1e-8) << t;
    }
}

TEST_P(EveryThermocouple, HasNoEmfAtTheReferenceTemperature) {
    EXPECT_NEAR(emf(GetParam(), celsius(0))->millivolts, 0, 1e-8);
}

TEST_P(EveryThermocouple, RefusesWhatIsOutOfRange) {
    const auto type = GetParam();
    const auto range = definedRange(type);
    const auto readable = readableRange(type);
    const double low_mV = emf(type, readable.low)->millivolts;
    const double high_mV = emf(type, range.high)->millivolts;
    for (const double t :
         {range.low.celsius() - 0.001, range.high.celsius() + 0.001, infinity, -infinity, nan}) {
        const auto refused = emf(type, celsius(t));
        ASSERT_FALSE(refused.ok()) << t;
        EXPECT_EQ(refused.error().kind, ErrorKind::badInput);
        EXPECT_FALSE(atMeter(type, celsius(t), celsius(20)).ok()) << t;
        EXPECT_FALSE(atMeter(type, celsius(100), celsius(t)).ok()) << t;
        EXPECT_FALSE(measured(type, Millivolts{1}, celsius(t)).ok()) << t;
    }
    for (const double mV : {low_mV - 1e-6, high_mV + 1e-6, infinity, -infinity, nan}) {
        const auto refused = temperature(type, Millivolts{mV});
        ASSERT_FALSE(refused.ok()) << mV;
        EXPECT_EQ(refused.error().kind, ErrorKind::badInput);
        EXPECT_FALSE(measured(type, Millivolts{mV}, celsius(0)).ok()) << mV;
    }
    EXPECT_TRUE(temperature(type, Millivolts{low_mV}).ok());
    EXPECT_TRUE(temperature(type, Millivolts{high_mV}).ok());
}

TEST_P(EveryThermocouple, ReadsTheWholeRangeWithAWarmColdJunction) {
    const auto range = readableRange(GetParam());
    for (const double share : {0.0, 0.1, 0.5, 0.9, 1.0}) {
        const auto hot = celsius(std::lerp(range.low.celsius(), range.high.celsius(), share));
        const auto meter = atMeter(GetParam(), hot, celsius(31.7));
        ASSERT_TRUE(meter.ok()) << meter.error().what;
        const auto back = measured(GetParam(), *meter, celsius(31.7));
        ASSERT_TRUE(back.ok()) << back.error().what;
        EXPECT_NEAR(back->celsius(), hot.celsius(), 1e-5);
    }
}

INSTANTIATE_TEST_SUITE_P(All, EveryThermocouple, testing::Values(B, E, J, K, N, R, S, T),
                         [](const auto& tested) { return std::string(name(tested.param)); });

TEST(Thermocouple, SaysWhyItRefuses) {
    EXPECT_EQ(emf(K, celsius(2000)).error().text(),
              "2000 °C is outside the range of a type K thermocouple, -270 to 1372 °C");
    EXPECT_EQ(emf(S, celsius(nan)).error().text(), "the temperature is not a number");
    EXPECT_EQ(temperature(K, Millivolts{60}).error().text(),
              "60 mV is outside the range of a type K thermocouple, -6.458 to 54.886 mV");
    EXPECT_EQ(temperature(J, Millivolts{nan}).error().text(), "the voltage is not a number");
    EXPECT_EQ(measured(K, Millivolts{54}, celsius(28)).error().text(),
              "55.122 mV is outside the range of a type K thermocouple, -6.458 to 54.886 mV "
              "(54 mV at the meter with its cold junction at 28 °C)");
    EXPECT_EQ(atMeter(B, celsius(1000), celsius(-5)).error().text(),
              "cold junction: -5 °C is outside the range of a type B thermocouple, 0 to 1820 °C");
}

// Type B: the emf falls before it rises --------------------------------------------------------------------

TEST(TypeB, ReadsOnlyWhereOneEmfMeansOneTemperature) {
    // Minimum -0.00258 mV at 21 °C, back to zero at 42.1 °C.
    EXPECT_NEAR(emf(B, celsius(21))->millivolts, -0.00258, 5e-6);
    EXPECT_LT(emf(B, celsius(42.13))->millivolts, 0);
    EXPECT_GT(emf(B, readableRange(B).low)->millivolts, 0);
    EXPECT_LT(emf(B, readableRange(B).low)->millivolts, 1e-5);
    for (const double mV : {-0.002, 0.0})
        EXPECT_FALSE(temperature(B, Millivolts{mV}).ok()) << mV;
    EXPECT_EQ(
        temperature(B, Millivolts{-0.002}).error().text(),
        "-0.002 mV is too little for a type B thermocouple, which cannot tell temperatures below 42.14 °C");
}

TEST(TypeB, HardlyNeedsItsColdJunction) {
    const auto meter = atMeter(B, celsius(1260), celsius(28));
    const auto warmer = measured(B, *meter, celsius(38));
    EXPECT_NEAR(warmer->celsius(), 1260, 0.2);
}

// Cold junction --------------------------------------------------------------------------------------------

// Computed from the reference functions by another implementation: hot 1260 °C, cold 28 °C.
struct ColdCase {
    ThermocoupleType type;
    double meter_mV;
    double addedWrongly_C;  ///< T(meter) + 28
    double uncorrected_C;   ///< T(meter)
    double perColdDegree_C; ///< error at 1260 °C of 1 °C at a cold junction at 25 °C
    double slope_uV_per_C;
};

class ColdJunction : public testing::TestWithParam<ColdCase> {};

TEST_P(ColdJunction, IsAddedAsEmfNeverAsTemperature) {
    const auto& c = GetParam();
    EXPECT_NEAR(atMeter(c.type, celsius(1260), celsius(28))->millivolts, c.meter_mV, 0.0001);
    const auto right = measured(c.type, Millivolts{c.meter_mV}, celsius(28));
    ASSERT_TRUE(right.ok()) << right.error().what;
    EXPECT_NEAR(right->celsius(), 1260, 0.01);
    const auto uncorrected = temperature(c.type, Millivolts{c.meter_mV});
    EXPECT_NEAR(uncorrected->celsius(), c.uncorrected_C, 0.06);
    EXPECT_NEAR(uncorrected->celsius() + 28, c.addedWrongly_C, 0.06);
}

TEST_P(ColdJunction, PassesItsOwnErrorOn) {
    const auto& c = GetParam();
    const auto meter = atMeter(c.type, celsius(1260), celsius(25));
    const auto wrong = measured(c.type, *meter, celsius(26));
    EXPECT_NEAR(wrong->celsius() - 1260, c.perColdDegree_C, 0.01);
    EXPECT_NEAR(1000 * slope_mV_per_C(c.type, 1260), c.slope_uV_per_C, 0.1);
}

INSTANTIATE_TEST_SUITE_P(At1260, ColdJunction,
                         testing::Values(ColdCase{K, 49.8784, 1256.7, 1228.7, 1.14, 35.6},
                                         ColdCase{N, 45.3211, 1267.9, 1239.9, 0.73, 36.6},
                                         ColdCase{S, 12.5139, 1274.7, 1246.7, 0.50, 12.1},
                                         ColdCase{R, 13.9080, 1276.7, 1248.7, 0.42, 14.0},
                                         ColdCase{B, 7.4197, 1288.2, 1260.2, 0.00, 10.7}));

} // namespace
} // namespace ringhold
