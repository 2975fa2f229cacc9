#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "ui/common/cost_words.h"
#include "ui/kiln/health_words.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// Climbs that slow from 80 min by `slower` a firing, at 230 V.
std::vector<FiringHealth> firings(int count, double slower, double volts = 230) {
    std::vector<FiringHealth> all;
    for (int i = 0; i < count; ++i) {
        FiringHealth firing;
        firing.at = noonOfMarch(i + 1);
        firing.climb = FixedClimb{80 + slower * i + (i % 2 ? 0.2 : -0.2), Volts{volts}, true};
        firing.energy = KnownEnergy{Energy::fromKilowattHours(70), EnergySource::dutyAndRatedPower};
        firing.hoursAbove1200 = 3;
        firing.offset = OffsetFound{TemperatureDifference::fromCelsius(-0.8 * slower * i),
                                    TemperatureDifference::fromCelsius(1)};
        all.push_back(firing);
    }
    return all;
}

class HealthWordsTest : public testing::Test {
  protected:
    std::string climb(const std::vector<FiringHealth>& told) {
        return plainWords(climbWords(kilnHealth(told, {}), m_book->preferences()));
    }
    NotebookOnDisk m_book;
};

} // namespace

TEST_F(HealthWordsTest, FewFiringsSayNothing) {
    EXPECT_EQ(climb(firings(3, 1)), "The climb over 1 000 to 1 200 °C: not enough firings yet, 3 of 5.");
    EXPECT_EQ(climb({}), "The climb over 1 000 to 1 200 °C: not enough firings yet, 0 of 5.");
}

TEST_F(HealthWordsTest, ASlowerClimbIsToldWithItsIntervalAndVolts) {
    const auto words = climb(firings(12, 1));
    EXPECT_NE(words.find("took 12 % longer (1"), std::string::npos) << words;
    EXPECT_NE(words.find("than ten firings ago, at the same volts: 1 h 31 now."), std::string::npos) << words;
    EXPECT_NE(climb(firings(12, 0)).find("takes as long as ten firings ago"), std::string::npos);
}

TEST_F(HealthWordsTest, ClimbsAtOtherVoltsAreLeftOutAndCounted) {
    auto told = firings(8, 0);
    told[3].climb->line = Volts{205};
    EXPECT_NE(climb(told).find("One climb was left out"), std::string::npos) << climb(told);
}

TEST_F(HealthWordsTest, EnergyIsToldAndWhatIsUnknownIsNot) {
    EXPECT_EQ(plainWords(energyWords(kilnHealth(firings(6, 0), {}))),
              "A firing takes about 70 kWh by the duty, as much as five firings ago, give or take 5 %.");
    EXPECT_TRUE(energyWords(KilnHealth()).isEmpty());
    EXPECT_TRUE(elementWords(KilnHealth()).isEmpty());
}

TEST_F(HealthWordsTest, WornElementsAreNamedWithTheLimit) {
    auto told = firings(9, 0);
    for (std::size_t i = 0; i < told.size(); ++i)
        told[i].resistance_ohm = Estimate{5.5 * (1 + 0.015 * double(i)), 0.02};
    const auto words = plainWords(elementWords(kilnHealth(told, {})));
    EXPECT_NE(words.find("12 % above"), std::string::npos) << words;
    EXPECT_NE(words.find("time for new ones"), std::string::npos) << words;
    EXPECT_NE(words.find("common practice"), std::string::npos) << words;
}

TEST_F(HealthWordsTest, AProbeThatAgesReadsLow) {
    const auto& preferences = m_book->preferences();
    const auto words = plainWords(probeWords(u"T1"_qs, probeHealth(firings(12, 1), {}), preferences));
    EXPECT_EQ(words.find("T1: 12 firings, 36 h above 1 200 °C. It reads "), 0U) << words;
    EXPECT_NE(words.find("lower than ten firings ago ("), std::string::npos) << words;
    EXPECT_NE(words.find("it ages"), std::string::npos) << words;
    EXPECT_NE(
        plainWords(probeWords(u"T1"_qs, probeHealth(firings(2, 1), {}), preferences)).find("not enough"),
        std::string::npos);
}

TEST_F(HealthWordsTest, PlacesAreToldInDegreesWithIntervals) {
    const Evenness even{{{"top", {5, 2}, true}, {"middle", {0, 2}, true}, {"floor", {0, 0}, false}},
                        Estimate{5, 2.5}};
    EXPECT_EQ(plainWords(placesWords(even, m_book->preferences())),
              "top + 5 °C ± 3, middle + 0 °C ± 3, floor not told: its cones all stood or all were down");
    EXPECT_EQ(plainWords(spreadWords(even, m_book->preferences())), "5 °C ± 4");
    EXPECT_EQ(plainWords(spreadWords({}, m_book->preferences())), "–");
}

TEST(CostWords, ACostIsSharedByHead) {
    FiringUse use;
    EXPECT_TRUE(costWords(use, 3).isEmpty());
    use.electricity = KnownEnergy{Energy::fromKilowattHours(71), EnergySource::meterStands};
    EXPECT_EQ(costWords(use, 3).toStdString(), "71 kWh by the meter") << "no price, no cost";
    use.pricePerKilowattHour = 0.3;
    EXPECT_EQ(costWords(use, 10).toStdString(), "71 kWh by the meter, cost 21.30, 2.13 a piece");
    EXPECT_EQ(costWords(use, 0).toStdString(), "71 kWh by the meter, cost 21.30");
    use.gas = 4;
    EXPECT_EQ(costText(use).toStdString(), "21.30 +") << "gas without a price";
    use.gasPrice = 1.5;
    EXPECT_EQ(costText(use).toStdString(), "27.30");
}

} // namespace ringhold::test
