#include "core/thermocouple/tolerance.h"
#include "tests/ui/plan/plan_book.h"
#include "ui/plan/plan_basis.h"

#include <cmath>

namespace ringhold {
namespace {

class PlanBasisTest : public testing::Test {
  protected:
    ProbeId addProbe(KilnId kiln, const std::string& label, std::optional<Instant> retired = {}) {
        auto writer = m_book.notebook().writer();
        return *writer.add(Probe{{}, kiln, label, ThermocoupleType::K, "", {}, retired});
    }
    std::vector<OffsetChoice> choices(KilnId kiln) {
        return *offsetChoices(m_book.notebook().reader(), kiln);
    }

    test::PlanBook m_book;
    const KilnId m_heron = m_book.addHeron();
};

TEST_F(PlanBasisTest, TakesTheOffsetFromTheKilnsHistory) {
    const auto found = choices(m_heron);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].probe, "control");
    EXPECT_EQ(found[0].place, "middle shelf");
    EXPECT_EQ(found[0].prior.firings, 3);
    EXPECT_NEAR(found[0].prior.mean.celsius(), 7, 1);
    EXPECT_LT(found[0].prior.sd.celsius(), 4);
    EXPECT_EQ(choiceWords(found[0]), QStringLiteral("control, cones at middle shelf"));
}

TEST_F(PlanBasisTest, PutsProbesWithoutHistoryLastAndLeavesRetiredOnesOut) {
    addProbe(m_heron, "second");
    addProbe(m_heron, "burnt out", m_book.notebook().clock().now());
    const auto found = choices(m_heron);
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[1].probe, "second");
    EXPECT_EQ(found[1].prior.firings, 0);
    EXPECT_EQ(choiceWords(found[1]), QStringLiteral("second, no offset yet"));
}

TEST_F(PlanBasisTest, KeepsPlacesApart) {
    auto writer = m_book.notebook().writer();
    const auto probe = m_book.notebook().reader().probes(m_heron)->front().id;
    const auto firing = m_book.notebook().reader().firings()->back();
    ASSERT_TRUE(
        writer.file({firing.id, m_heron, probe, "top", firing.began + std::chrono::hours(1),
                     TemperatureDifference::fromCelsius(-12), TemperatureDifference::fromCelsius(1)}));
    const auto found = choices(m_heron);
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[0].place, "top"); // the newest first
    EXPECT_LT(found[0].prior.mean.celsius(), -5);
    EXPECT_EQ(found[1].prior.firings, 3);
}

TEST_F(PlanBasisTest, HasSomethingForAKilnWithoutProbes) {
    auto writer = m_book.notebook().writer();
    Kiln kiln;
    kiln.name = "Wren";
    const auto found = choices(*writer.add(kiln));
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].prior.firings, 0);
    EXPECT_EQ(choiceWords(found[0]), QStringLiteral("no probe filed"));
}

OffsetPrior prior(double mean_C, double sd_C, int firings) {
    return {TemperatureDifference::fromCelsius(mean_C), TemperatureDifference::fromCelsius(sd_C), firings};
}

// 1.645 standard deviations hold 90 % of a normal distribution on both sides of its mean.
TEST_F(PlanBasisTest, TellsAnOffsetWithItsRange) {
    const auto& preferences = m_book.preferences();
    const auto told = [&](const OffsetPrior& p) {
        return offsetWords(p, preferences).replace(QChar(0x202f), QLatin1Char(' '));
    };
    EXPECT_EQ(told(prior(7, 2, 3)), QStringLiteral("reads 7 °C high (+ 4 °C to + 10 °C), from 3 firings"));
    EXPECT_EQ(told(prior(-7, 2, 1)),
              QStringLiteral("reads 7 °C low (\u2212 10 °C to \u2212 4 °C), from 1 firing"));
    EXPECT_EQ(told(prior(0.2, 2, 2)), QStringLiteral("reads true (\u2212 3 °C to + 3 °C), from 2 firings"));
    EXPECT_EQ(told(prior(0, 10, 0)),
              QStringLiteral("may read 16 °C high or low: no firing has told its offset yet"));
}

TEST_F(PlanBasisTest, ReckonsForTheChosenKilnAndOffset) {
    const Plan plan = examplePlans().front().plan;
    auto basis = typicalBasis();
    const auto typical = planCurve(plan, contextOf(basis, plan));
    EXPECT_EQ(typical.steps[2].coneWaitEnd, ConeWaitEnd::estimated);
    EXPECT_EQ(contextOf(basis, plan).kiln.basis, KilnBasis::typical);

    // A probe that reads high: the cone feels less than the probe says, and is down later.
    basis.offset.prior.mean = TemperatureDifference::fromCelsius(7);
    const auto high = planCurve(plan, contextOf(basis, plan));
    EXPECT_GT(high.steps[2].end, typical.steps[2].end + std::chrono::minutes(4));

    basis.kiln = *m_book.notebook().reader().kilnNamed("Heron").value();
    EXPECT_EQ(contextOf(basis, plan).kiln.basis, KilnBasis::scaledByRatedPower);
    EXPECT_EQ(contextOf(basis, plan).line, Volts{230});
}

TEST_F(PlanBasisTest, AssumesTheEndOfAConeThatTheChartDoesNotHave) {
    Plan plan = examplePlans().front().plan;
    std::get<ConeWait>(plan.steps[2]).cone = "99";
    const auto planned = planCurve(plan, contextOf(typicalBasis(), plan));
    EXPECT_EQ(planned.steps[2].coneWaitEnd, ConeWaitEnd::assumed);
}

} // namespace
} // namespace ringhold
