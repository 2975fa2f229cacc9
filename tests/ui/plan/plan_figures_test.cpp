#include "tests/ui/plan/plan_book.h"
#include "ui/plan/plan_crystal.h"
#include "ui/plan/plan_figures.h"

namespace ringhold {
namespace {

class PlanFiguresTest : public testing::Test {
  protected:
    void reckon() {
        m_planned = planCurve(m_plan, contextOf(m_basis, m_plan));
        m_energy = planEnergy(*m_planned, contextOf(m_basis, m_plan));
    }
    const PlanFigure& figure(const QString& label) {
        m_figures =
            planFigures(m_plan, *m_planned, m_energy ? &*m_energy : nullptr, m_basis, m_book.preferences());
        for (const auto& each : m_figures)
            if (each.label == label)
                return each;
        ADD_FAILURE() << "no " << label.toStdString();
        return m_none;
    }
    QStringList warnings() {
        return planWarnings(m_plan, *m_planned, m_energy ? &*m_energy : nullptr, m_basis,
                            m_book.preferences());
    }
    void chooseHeron(Fuel fuel = Fuel::electric) {
        m_book.addHeron(fuel);
        m_basis.kiln = *m_book.notebook().reader().kilnNamed("Heron").value();
    }

    test::PlanBook m_book;
    Plan m_plan = examplePlans().front().plan;
    PlanBasis m_basis = typicalBasis();
    std::optional<PlannedCurve> m_planned;
    std::optional<PlanEnergy> m_energy;
    std::vector<PlanFigure> m_figures;
    PlanFigure m_none;
};

TEST_F(PlanFiguresTest, TellLengthAndConeDown) {
    reckon();
    EXPECT_EQ(figure(QStringLiteral("Whole firing")).value, m_book.preferences().span(m_planned->length()));
    const auto& cone = figure(QStringLiteral("Cone 9 down"));
    EXPECT_TRUE(cone.value.startsWith(QStringLiteral("about ")));
    EXPECT_TRUE(cone.source.contains(QStringLiteral("estimate")));
}

TEST_F(PlanFiguresTest, SayWhoseModelTheEnergyIs) {
    reckon();
    EXPECT_EQ(figure(QStringLiteral("Energy")).value,
              QStringLiteral("about %1\u202fkWh").arg(std::lround(m_energy->total.kilowattHours())));
    EXPECT_TRUE(
        figure(QStringLiteral("Energy")).source.contains(QStringLiteral("a typical kiln of 11\u202fkW")));
    EXPECT_EQ(figure(QStringLiteral("Cost")).value, QStringLiteral("–"));
    chooseHeron();
    reckon();
    EXPECT_TRUE(figure(QStringLiteral("Energy")).source.contains(QStringLiteral("scaled to 9\u202fkW")));
    EXPECT_EQ(figure(QStringLiteral("Cost")).value,
              QStringLiteral("about %1").arg(m_energy->total.kilowattHours() * 0.25, 0, 'f', 2));
}

TEST_F(PlanFiguresTest, HaveNoEnergyForAKilnThatBurnsItsFuel) {
    chooseHeron(Fuel::gas);
    reckon();
    EXPECT_FALSE(hasEnergyModel(m_basis));
    EXPECT_EQ(figure(QStringLiteral("Energy")).value, QStringLiteral("–"));
    EXPECT_TRUE(warnings().isEmpty());
}

TEST_F(PlanFiguresTest, TellTheCrystalWithItsRange) {
    reckon();
    const auto crystal = planCrystal(m_plan, *m_planned, m_basis);
    ASSERT_TRUE(crystal);
    EXPECT_EQ(crystal->rings.size(), 3u);
    EXPECT_LT(crystal->radius.low_mm, crystal->radius.likely_mm);
    EXPECT_LT(crystal->radius.likely_mm, crystal->radius.high_mm);
    EXPECT_EQ(figure(QStringLiteral("Crystal")).value,
              QStringLiteral("about %1\u202fmm across").arg(2 * crystal->radius.likely_mm, 0, 'f', 0));
    EXPECT_TRUE(figure(QStringLiteral("Crystal"))
                    .source.contains(QStringLiteral("by published growth rates; 3 rings")))
        << figure(QStringLiteral("Crystal")).source.toStdString();
}

TEST_F(PlanFiguresTest, SayOneFigureWhereBothEndsRoundAlike) {
    PlanCrystal crystal{{6.1, 9, 16}, {{1, 1.5, 2.38}, {3, 3.5, 4.41}}, publishedGrowthRate()};
    const auto words = [&] { return sourceWords(crystal).toStdString(); };
    EXPECT_EQ(words(), "12 to 32\u202fmm by published growth rates; 2 rings about 1.4\u202fmm wide");
    crystal.rings.back().outer_mm = 4.6;
    EXPECT_NE(words().find("about 1.4 to 1.6\u202fmm wide"), std::string::npos) << words();
}

// 60 µm/min at the best temperature, the published rate: an hour there adds 3.6 mm of radius.
TEST_F(PlanFiguresTest, GrowTheCrystalByTheGrowthRate) {
    const auto grown_mm = [this](std::chrono::minutes hold) {
        m_plan = {"x",
                  {Climb{Temperature::fromCelsius(1260), Rate::fromCelsiusPerHour(200)},
                   Drop{Temperature::fromCelsius(1090), {}},
                   Hold{Temperature::fromCelsius(1090), hold, TemperatureDifference::fromCelsius(5)}}};
        reckon();
        return planCrystal(m_plan, *m_planned, m_basis)->radius.likely_mm;
    };
    const double oneHour_mm = grown_mm(std::chrono::minutes(60));
    EXPECT_NEAR(grown_mm(std::chrono::minutes(120)) - oneHour_mm, 3.6, 0.02);
}

TEST_F(PlanFiguresTest, TakeTheProbesOffsetOffBeforeTheyGrow) {
    std::get<Hold>(m_plan.steps[4]).at = Temperature::fromCelsius(1130);
    reckon();
    const double asRead = planCrystal(m_plan, *m_planned, m_basis)->radius.likely_mm;
    m_basis.offset.prior.mean = TemperatureDifference::fromCelsius(30); // the glaze is at about 1103
    EXPECT_GT(planCrystal(m_plan, *m_planned, m_basis)->radius.likely_mm, asRead * 1.2);
}

TEST_F(PlanFiguresTest, HaveNoCrystalWhereNoneGrows) {
    m_plan = {"biscuit",
              {Climb{Temperature::fromCelsius(900), Rate::fromCelsiusPerHour(100)},
               Cool{Temperature::fromCelsius(200), {}}}};
    reckon();
    EXPECT_FALSE(planCrystal(m_plan, *m_planned, m_basis));
}

TEST_F(PlanFiguresTest, WarnOfAConeThatWouldStand) {
    auto& wait = std::get<ConeWait>(m_plan.steps[2]);
    wait.set = Temperature::fromCelsius(1200);
    reckon();
    EXPECT_EQ(warnings().value(0),
              QStringLiteral("Step 3: after the longest soak cone 9 would still stand."));
    EXPECT_TRUE(figure(QStringLiteral("Cone 9 down")).value.startsWith(QStringLiteral("not by ")));
}

TEST_F(PlanFiguresTest, WarnOfARateThatTheKilnDoesNotHave) {
    std::get<Climb>(m_plan.steps[1]).rate = Rate::fromCelsiusPerHour(900);
    reckon();
    ASSERT_FALSE(warnings().isEmpty());
    EXPECT_TRUE(warnings()[0].startsWith(QStringLiteral("Step 2: the kiln would fall up to ")));
    EXPECT_TRUE(warnings()[0].contains(QStringLiteral("behind at full power")));
}

TEST_F(PlanFiguresTest, SayWhenAllRestsOnAnAssumption) {
    std::get<ConeWait>(m_plan.steps[2]).cone = "99";
    reckon();
    EXPECT_TRUE(figure(QStringLiteral("Whole firing")).source.contains(QStringLiteral("assumed")));
    EXPECT_TRUE(figure(QStringLiteral("Cone 99 down")).source.contains(QStringLiteral("assumed")));
}

} // namespace
} // namespace ringhold
