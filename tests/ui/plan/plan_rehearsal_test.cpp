#include "core/book/book.h"
#include "core/learn/kiln_run.h"
#include "core/plan/plan_kiln.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/plan/plan_rehearsal.h"
#include "ui/plan/rehearsal_model.h"
#include "ui/plan/rehearsal_view.h"

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QTest>

namespace ringhold::test {
namespace {

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Plan modestPlan() {
    return {"modest",
            {Climb{celsius(600), Rate::fromCelsiusPerHour(150)},
             Hold{celsius(600), std::chrono::hours(1), TemperatureDifference::fromCelsius(5)}}};
}

/// A firing of eight hours with volts and amps each two minutes, by the model kiln itself: at full power,
/// then held.
void addMeteredFiring(NotebookOnDisk& book, const Kiln& kiln, Instant began) {
    auto writer = book->writer();
    const auto firing = *writer.add(Firing{{}, kiln.id, "past", began, {}, {}, {}});
    const auto add = [&](Quantity quantity, const char* label) {
        return *writer.add(Channel{{}, firing, quantity, label, {}});
    };
    const ChannelId probe = add(Quantity::temperature, "T1");
    const ChannelId volts = add(Quantity::lineVolts, "U");
    const ChannelId amps = add(Quantity::lineAmps, "I");
    KilnRun run(kilnModelFor(kiln.ratedPower, kiln.ratedVolts).constants, 22, 22);
    std::vector<Reading> readings;
    for (int minute = 0; minute <= 480; minute += 2) {
        const double full_W = run.full_W(230);
        const double power_W =
            run.chamber_C() < 1000 ? full_W : std::clamp(run.powerTowards_W(1000, 120), 0.0, full_W);
        const Instant at = began + std::chrono::minutes(minute);
        readings.push_back({probe, at, run.chamber_C()});
        readings.push_back({volts, at, 230});
        readings.push_back({amps, at, power_W / 230});
        for (int step = 0; step < 6; ++step)
            run.step(power_W, 20);
    }
    EXPECT_TRUE(writer.add(readings));
    EXPECT_TRUE(writer.end(firing, readings.back().at));
}

class PlanRehearsal : public testing::Test {
  protected:
    PlanRehearsal() {
        m_kiln.name = "Heron";
        m_kiln.ratedPower = Power{11000};
        m_kiln.ratedVolts = Volts{230};
        m_kiln.pricePerKilowattHour = 0.25;
        m_kiln.id = *m_book->writer().add(m_kiln);
    }
    PlanBasis basis() const {
        PlanBasis known = typicalBasis();
        known.kiln = m_kiln;
        return known;
    }
    bool done(RehearsalView& view) {
        return QTest::qWaitFor([&view] { return !view.busy(); }, 120'000);
    }
    static QString words(RehearsalView& view) {
        QStringList all;
        for (const auto* label : view.findChildren<QLabel*>())
            if (label->isVisibleTo(&view))
                all << label->text();
        return all.join(u'\n');
    }

    NotebookOnDisk m_book;
    Kiln m_kiln;
};

RehearsedRange range(double low, double likely, double high) {
    return {low, likely, high};
}

} // namespace

TEST_F(PlanRehearsal, IsToldWithItsRanges) {
    const auto& preferences = m_book->preferences();
    EXPECT_EQ(rangeWords(range(9, 12, 15)), u"12 (9 to 15)");
    EXPECT_EQ(rangeWords({}), u"–");
    EXPECT_EQ(hoursWords({14.0, std::nullopt, std::nullopt}, preferences),
              u"not before " + preferences.span(std::chrono::hours(14)));
    EXPECT_EQ(hoursWords({}, preferences), u"never");
    Rehearsal rehearsal;
    rehearsal.length_h = range(13, 14, 15);
    rehearsal.energy_kWh = range(66, 71, 77);
    const QString told = rehearsalWords(rehearsal, m_kiln, preferences);
    EXPECT_TRUE(told.contains(u"71 (66 to 77)")) << told.toStdString();
    EXPECT_TRUE(told.contains(u"17.75 (16.50 to 19.25)")) << told.toStdString();
}

TEST_F(PlanRehearsal, WarnsOfStallsAndOfWhatFallsBehind) {
    auto& preferences = m_book->preferences();
    Rehearsal rehearsal;
    rehearsal.steps = {{0, range(3, 4, 5), range(0, 2, 4), range(1, 2, 3), 0},
                       {1, {}, range(30, 40, 55), range(1, 2, 3), 0.3}};
    ASSERT_TRUE(preferences.setUnit(TemperatureUnit::fahrenheit));
    const auto warnings = rehearsalWarnings(modestPlan(), rehearsal, preferences);
    ASSERT_EQ(warnings.size(), 2);
    EXPECT_TRUE(warnings[0].contains(u"30 of 100")) << warnings[0].toStdString();
    EXPECT_TRUE(warnings[1].contains(u"72")) << warnings[1].toStdString(); // 40 °C behind
}

TEST_F(PlanRehearsal, HasARowForEachStep) {
    RehearsalModel model(m_book->preferences());
    const QAbstractItemModelTester tester(&model);
    model.show(modestPlan(), {{0, range(3, 4, 5), range(0, 0.2, 0.4), range(1, 2, 3), 0},
                              {1, range(4, 5, 6), range(3, 4, 5), range(1, 2, 3), 0}});
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_TRUE(model.index(0, 0).data().toString().startsWith(u"1 · climb"));
    EXPECT_EQ(model.index(0, 2).data().toString(), u"–");
    EXPECT_EQ(model.index(1, 2).data().toString(), u"4 (3 to 5)");
    model.show({}, {});
    EXPECT_EQ(model.rowCount(), 0);
}

TEST_F(PlanRehearsal, SaysWhenThereAreNotEnoughFirings) {
    addMeteredFiring(m_book, m_kiln, noonOfMarch(1));
    RehearsalView view(m_book.notebook());
    view.show(modestPlan(), basis());
    ASSERT_TRUE(done(view));
    EXPECT_TRUE(words(view).startsWith(u"Not enough firings yet: 1")) << words(view).toStdString();
    view.show(modestPlan(), typicalBasis());
    ASSERT_TRUE(done(view));
    EXPECT_TRUE(words(view).contains(u"Choose one of your kilns"));
    view.show(std::nullopt, basis());
    ASSERT_TRUE(done(view));
    EXPECT_TRUE(words(view).contains(u"without faults"));
}

TEST_F(PlanRehearsal, FollowsAPlanOnTheKilnThatItsFiringsShowed) {
    for (const int day : {1, 4})
        addMeteredFiring(m_book, m_kiln, noonOfMarch(day));
    RehearsalView view(m_book.notebook());
    std::optional<Rehearsal> rehearsal;
    QObject::connect(&view, &RehearsalView::rehearsed,
                     [&rehearsal](const std::optional<Rehearsal>& told) { rehearsal = told; });
    view.show(modestPlan(), basis());
    ASSERT_TRUE(done(view));
    ASSERT_TRUE(rehearsal) << words(view).toStdString();
    // 578 °C at 150 °C/h and an hour of hold: 4 h 51 and what it takes to see the arrival
    ASSERT_TRUE(rehearsal->length_h.median);
    EXPECT_NEAR(*rehearsal->length_h.median, 4.86, 0.15);
    EXPECT_TRUE(words(view).contains(u"by 2 past firings"));
    EXPECT_FALSE(rehearsal->band.empty());
}

} // namespace ringhold::test
