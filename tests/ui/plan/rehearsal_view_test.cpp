#include "core/kiln/practice_kiln.h"
#include "tests/support/screens.h"
#include "tests/ui/plan/plan_book.h"
#include "ui/plan/rehearsal_model.h"
#include "ui/plan/rehearsal_view.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>

namespace ringhold {
namespace {

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Plan shortPlan() {
    return {"short",
            {Climb{celsius(700), Rate::fromCelsiusPerHour(350)},
             Hold{celsius(700), std::chrono::minutes(30), TemperatureDifference::fromCelsius(5)},
             Cool{celsius(600), {}}}};
}

class RehearsalTest : public testing::Test {
  protected:
    RehearsalTest() { m_view.resize(600, 300); }

    PlanBasis basisOf(KilnId id) {
        PlanBasis basis = typicalBasis();
        const auto kilns = m_book.notebook().reader().kilns();
        for (const auto& kiln : *kilns)
            if (kiln.id == id)
                basis.kiln = kiln;
        return basis;
    }
    /// What is said when nothing is being reckoned any more.
    QString words() {
        EXPECT_TRUE(QTest::qWaitFor([this] { return !m_view.busy(); }, 60'000));
        for (const auto* label : m_view.findChildren<QLabel*>())
            if (!label->isHidden() && label->wordWrap())
                return label->text().replace(QChar(0x202f), QLatin1Char(' '));
        return {};
    }
    QString show(const std::optional<Plan>& plan, const PlanBasis& basis) {
        m_view.show(plan, basis);
        return words();
    }
    /// A firing of the short plan with its volts and amps, every 30 s.
    void fire(KilnId kiln, std::uint64_t seed) {
        PracticeSettings settings;
        settings.plan = shortPlan();
        settings.seed = seed;
        PracticeKiln practice(settings);
        auto writer = m_book.notebook().writer();
        const Instant lit = m_book.clockNow() - std::chrono::hours(24 * (100 - static_cast<int>(seed)));
        const FiringId firing = *writer.add(Firing{{}, kiln, "past", lit, {}, {}, {}});
        const ChannelId probe = *writer.add(Channel{{}, firing, Quantity::temperature, "T", {}});
        const ChannelId volts = *writer.add(Channel{{}, firing, Quantity::lineVolts, "V", {}});
        const ChannelId amps = *writer.add(Channel{{}, firing, Quantity::lineAmps, "A", {}});
        std::vector<Reading> readings;
        for (; !practice.finished(); practice.advance(std::chrono::seconds(30))) {
            const auto reading = practice.reading();
            const Instant at = lit + practice.elapsed();
            readings.push_back({probe, at, reading.probe->celsius()});
            readings.push_back({volts, at, reading.line.volts});
            readings.push_back({amps, at, reading.amps.amps});
        }
        ASSERT_TRUE(writer.add(readings).ok());
        ASSERT_TRUE(writer.end(firing, lit + practice.elapsed()).ok());
    }

    test::PlanBook m_book;
    Theme m_theme;
    RehearsalView m_view{m_book.notebook()};
};

TEST_F(RehearsalTest, SaysWhyItCannotRehearse) {
    QSignalSpy rehearsed(&m_view, &RehearsalView::rehearsed);
    const auto heron = m_book.addHeron();
    EXPECT_TRUE(show({}, basisOf(heron)).contains(QStringLiteral("without faults")));
    EXPECT_TRUE(show(Plan{"faulty", {}}, basisOf(heron)).contains(QStringLiteral("without faults")));
    EXPECT_TRUE(show(shortPlan(), typicalBasis()).contains(QStringLiteral("one of your kilns")));
    EXPECT_TRUE(show(shortPlan(), basisOf(heron)).contains(QStringLiteral("0 of this kiln")));
    EXPECT_FALSE(m_view.findChild<QTableView*>()->isVisibleTo(&m_view));
    for (const auto& told : rehearsed)
        EXPECT_FALSE(told.front().value<std::optional<Rehearsal>>());
}

TEST_F(RehearsalTest, HasNoModelOfAKilnThatBurnsFuel) {
    EXPECT_TRUE(
        show(shortPlan(), basisOf(m_book.addHeron(Fuel::gas))).contains(QStringLiteral("burns its fuel")));
}

TEST_F(RehearsalTest, RunsThePlanOnTheKilnOfThePastFirings) {
    const auto heron = m_book.addHeron();
    fire(heron, 1);
    EXPECT_TRUE(show(shortPlan(), basisOf(heron)).contains(QStringLiteral("1 of this kiln")));
    fire(heron, 2);
    Q_EMIT m_book.notebook().bookChanged();
    const QString told = words();
    EXPECT_TRUE(told.startsWith(QStringLiteral("Ends "))) << told.toStdString();
    EXPECT_TRUE(told.endsWith(QStringLiteral("by 2 past firings, 90 % ranges"))) << told.toStdString();
    EXPECT_TRUE(told.contains(QStringLiteral("costs ")));
    auto* table = m_view.findChild<QTableView*>();
    EXPECT_TRUE(table->isVisibleTo(&m_view));
    EXPECT_EQ(table->model()->rowCount(), 3);
    // On a weak line the same plan takes no less time.
    for (auto* field : m_view.findChildren<QDoubleSpinBox*>())
        if (field->accessibleName() == QStringLiteral("Line volts today"))
            field->setValue(150);
    const QString weak = words();
    EXPECT_NE(weak, told);
    EXPECT_TRUE(weak.contains(QStringLiteral("by 2 past firings")));
    m_theme.wear(*qApp);
    keepScreens(m_view, m_theme, QStringLiteral("rehearsal"));
}

TEST_F(RehearsalTest, TheModelKeepsItsContract) {
    RehearsalModel model(m_book.preferences());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    RehearsedStep climb{0, {1.9, 2.0, 2.25}, {0.0, 0.2, 0.4}, {7.8, 8.1, 8.4}, 0};
    RehearsedStep hold{1, {2.4, 2.5, {}}, {4.0, 12.0, 20.0}, {10, 12, 15}, 0};
    model.show(shortPlan(), {climb, hold});
    const auto cell = [&](int row, RehearsalColumn column) {
        return model.index(row, int(column)).data().toString().replace(QChar(0x202f), QLatin1Char(' '));
    };
    EXPECT_EQ(cell(0, RehearsalColumn::step), QStringLiteral("1 · climb to 700 °C"));
    EXPECT_EQ(cell(0, RehearsalColumn::ends), QStringLiteral("2 h 00 (1 h 54 to 2 h 15)"));
    EXPECT_EQ(cell(0, RehearsalColumn::behind), QStringLiteral("–"));
    EXPECT_EQ(cell(0, RehearsalColumn::energy), QStringLiteral("8.1 (7.8 to 8.4)"));
    EXPECT_EQ(cell(1, RehearsalColumn::ends), QStringLiteral("2 h 30 (2 h 24 or later)"));
    EXPECT_EQ(cell(1, RehearsalColumn::behind), QStringLiteral("12 (4 to 20)"));
    EXPECT_EQ(cell(1, RehearsalColumn::energy), QStringLiteral("12 (10 to 15)"));
    ASSERT_TRUE(m_book.preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    EXPECT_EQ(cell(1, RehearsalColumn::behind), QStringLiteral("22 (7 to 36)"));
    EXPECT_EQ(model.headerData(2, Qt::Horizontal).toString(), QStringLiteral("behind, °F"));
    model.show(shortPlan(), {hold});
    EXPECT_EQ(model.rowCount(), 1);
}

} // namespace
} // namespace ringhold
