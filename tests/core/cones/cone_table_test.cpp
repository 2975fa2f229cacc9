#include "core/base/tables.h"
#include "core/cones/cone_table.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

// End points published by the Edward Orton Jr. Ceramic Foundation (temperature-equivalent chart, °C); the
// basis of each value (read, memory, read-weak) stands in resources/tables/cones.csv.
TEST(ConeTable, LawMeetsThePublishedEndPointsOfSelfSupportingCones) {
    int values = 0;
    int within3 = 0;
    for (const Cone* cone : ConeTable::builtIn().series(ConeType::selfSupporting)) {
        if (cone->published.size() != 3)
            continue;
        for (const auto& published : cone->published) {
            const double residual_C =
                (cone->law.endPoint(published.point.climb) - published.point.end).celsius();
            EXPECT_LE(std::abs(residual_C), 4.0) << cone->name;
            values += 1;
            within3 += std::abs(residual_C) <= 3.0;
        }
    }
    EXPECT_EQ(values, 105);
    EXPECT_GE(within3, 100);
}

TEST(ConeTable, LawIsWithinTwoDegreesForTheConesOfCrystallineGlazes) {
    for (const char* name : {"6", "8", "9", "10"}) {
        const Cone* cone = ConeTable::builtIn().find(name);
        ASSERT_NE(cone, nullptr) << name;
        EXPECT_LE(cone->worstResidual().celsius(), 2.0) << name;
    }
}

struct Published {
    const char* cone;
    double rate_C_per_h;
    double end_C;
};

// The same chart, values seen on a copy.
class ChartValues : public testing::TestWithParam<Published> {};

TEST_P(ChartValues, AreInTheTable) {
    const Cone* cone = ConeTable::builtIn().find(GetParam().cone);
    ASSERT_NE(cone, nullptr);
    int found = 0;
    for (const auto& p : cone->published)
        if (p.point.climb.celsiusPerHour() == GetParam().rate_C_per_h) {
            EXPECT_EQ(p.point.end.celsius(), GetParam().end_C);
            ++found;
        }
    EXPECT_EQ(found, 1);
}

INSTANTIATE_TEST_SUITE_P(At60, ChartValues,
                         testing::Values(Published{"04", 60, 1063}, Published{"6", 60, 1222},
                                         Published{"8", 60, 1249}, Published{"9", 60, 1260},
                                         Published{"10", 60, 1285}, Published{"11", 60, 1294}));

TEST(ConeTable, ShippedFitIsTheFitOfTheShippedTable) {
    const auto fits = fitConeTable(tables::cones);
    ASSERT_TRUE(fits.ok());
    const auto refitted = ConeTable::parse(tables::cones, *fits);
    ASSERT_TRUE(refitted.ok());
    int compared = 0;
    for (const auto type : {ConeType::selfSupporting, ConeType::large, ConeType::small,
                            ConeType::selfSupportingIronFree, ConeType::largeIronFree}) {
        const auto shipped = ConeTable::builtIn().series(type);
        const auto again = refitted->series(type);
        ASSERT_EQ(shipped.size(), again.size());
        for (std::size_t i = 0; i < shipped.size(); ++i, ++compared) {
            EXPECT_EQ(shipped[i]->name, again[i]->name);
            EXPECT_NEAR(shipped[i]->law.endPoint(Rate::fromCelsiusPerHour(60)).celsius(),
                        again[i]->law.endPoint(Rate::fromCelsiusPerHour(60)).celsius(), 0.01);
        }
    }
    EXPECT_GT(compared, 130);
}

// Own study of the same table made apart from this program: E in kJ/mol, log10 A in 1/s.
TEST(ConeTable, ParametersAgreeWithAnIndependentFit) {
    struct Row {
        const char* cone;
        double E_kJ;
        double log10A;
    };
    for (const auto& row : {Row{"06", 950.6, 36.10}, Row{"6", 702.6, 21.39}, Row{"8", 704.0, 20.98},
                            Row{"9", 766.5, 22.98}, Row{"10", 824.6, 24.51}, Row{"14", 1564.5, 46.84}}) {
        const Cone* cone = ConeTable::builtIn().find(row.cone);
        ASSERT_NE(cone, nullptr);
        EXPECT_NEAR(cone->law.activation_J_per_mol() / 1e3, row.E_kJ, 0.06) << row.cone;
        EXPECT_NEAR(cone->law.lnA_per_s() / std::log(10.0), row.log10A, 0.006) << row.cone;
    }
}

TEST(ConeTable, KeepsTheSeriesApart) {
    const auto& table = ConeTable::builtIn();
    const Cone* standing = table.find("9");
    const Cone* large = table.find("9", ConeType::large);
    const Cone* small = table.find("9", ConeType::small);
    ASSERT_TRUE(standing && large && small);
    EXPECT_EQ(standing->activation, ActivationSource::ownRates);
    EXPECT_EQ(large->activation, ActivationSource::sibling);
    EXPECT_EQ(small->published.size(), 1u);
    const Rate sixty = Rate::fromCelsiusPerHour(60);
    const double earlier_C = (standing->law.endPoint(sixty) - large->law.endPoint(sixty)).celsius();
    EXPECT_GT(earlier_C, 1.0); // large cones go down 2 to 3 °C earlier
    EXPECT_LT(earlier_C, 4.0);
    EXPECT_EQ(table.find("9.7"), nullptr);
    EXPECT_NE(table.find("06"), table.find("6"));
}

TEST(ConeTable, RefusesABrokenTable) {
    EXPECT_FALSE(ConeTable::parse("h\n9,self-supporting,60,x,read\n", "h\n").ok());
    EXPECT_FALSE(ConeTable::parse("h\n9,clay,60,1260,read\n", "h\n").ok());
    const auto orphan =
        ConeTable::parse("h\n9,self-supporting,60,1260,read\n", "h\n8,self-supporting,700,20,own\n");
    ASSERT_FALSE(orphan.ok());
    EXPECT_EQ(orphan.error().line, 2);
}

} // namespace
} // namespace ringhold
