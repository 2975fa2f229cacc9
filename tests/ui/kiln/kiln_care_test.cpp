// The kiln's service log, and what its past firings tell of wear, cost and evenness.
#include "core/book/kiln_care.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/common/entry_table.h"
#include "ui/kiln/kiln_firings_model.h"
#include "ui/kiln/kiln_history.h"
#include "ui/kiln/kilns_page.h"
#include "ui/kiln/service_model.h"
#include "ui/kiln/service_pane.h"
#include "ui/kiln/wear_pane.h"

#include <QAbstractItemModelTester>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTest>

namespace ringhold::test {
namespace {

class KilnCareTest : public testing::Test {
  protected:
    KilnCareTest() {
        Kiln kiln = good(m_book->reader().kilns()).at(0);
        kiln.ratedPower = Power{9000};
        kiln.ratedVolts = Volts{230};
        kiln.pricePerKilowattHour = 0.3;
        expectGood(m_book->writer().alter(kiln));
    }
    Kiln kiln() { return good(m_book->reader().kilns()).at(0); }
    std::vector<ServiceEntry> services() { return good(KilnCare(m_book->book()).services(m_kiln)); }
    /// With duty read every minute: 9 kW for ten hours.
    FiringId fire(int day) {
        const FiringId firing = m_book.addFiring(m_kiln, {.began = noonOfMarch(day), .probe = m_probe});
        auto writer = m_book->writer();
        const ChannelId duty = good(writer.add(Channel{{}, firing, Quantity::duty, "duty", std::nullopt}));
        std::vector<Reading> readings;
        for (int minute = 0; minute <= 600; ++minute)
            readings.push_back(
                {duty, noonOfMarch(day) + std::chrono::minutes(minute), 1.0, Origin::instrument, false});
        good(writer.add(readings));
        return firing;
    }
    /// Cold cones of the firing's own pack and of one on the floor: 9 at these hours, 8 down, 10 standing.
    void coldPacks(FiringId firing, double middle, double floor) {
        auto writer = m_book->writer();
        const PackId above = good(m_book->reader().packs(firing)).at(0).id;
        const PackId below =
            good(writer.add(Pack{{}, firing, "floor", ConeType::selfSupporting, {"8", "9", "10"}, false}));
        const Instant at = noonOfMarch(20);
        for (const auto& [pack, hour] : {std::pair(above, middle), std::pair(below, floor)}) {
            good(writer.add(Look{{}, pack, at, "8", 6, true, false}));
            good(writer.add(Look{{}, pack, at, "9", hour, true, false}));
            good(writer.add(Look{{}, pack, at, "10", 0, true, false}));
        }
    }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_kiln = m_book.addKiln("Heron");
    ProbeId m_probe = m_book.addProbe(m_kiln, "T1");
};

} // namespace

TEST_F(KilnCareTest, ServiceIsWrittenCorrectedAndTakenBack) {
    ServiceModel model(m_book.notebook());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    QSignalSpy troubled(&model, &ServiceModel::troubled);
    EXPECT_EQ(model.rowCount(), 0) << "no kiln, no entry";
    model.show(m_kiln, good(m_book->reader().probes(m_kiln)));
    ASSERT_EQ(model.rowCount(), 1);
    const auto set = [&](int row, ServiceColumn column, const QString& text) {
        return model.setData(model.index(row, int(column)), text);
    };
    EXPECT_FALSE(set(0, ServiceColumn::words, u"  "_qs));
    EXPECT_TRUE(set(0, ServiceColumn::words, u"all six new"_qs));
    EXPECT_TRUE(set(0, ServiceColumn::kind, u"e"_qs));
    EXPECT_TRUE(set(0, ServiceColumn::probe, u"t1"_qs));
    EXPECT_TRUE(set(0, ServiceColumn::day, u"2026-02-01"_qs));
    ASSERT_EQ(services().size(), 1U);
    EXPECT_EQ(services()[0].kind, ServiceKind::elements);
    EXPECT_EQ(services()[0].probe, m_probe);
    EXPECT_EQ(model.elementsFitted(), services()[0].at);
    EXPECT_FALSE(set(0, ServiceColumn::kind, u"bricks"_qs));
    EXPECT_FALSE(set(0, ServiceColumn::probe, u"T9"_qs));
    EXPECT_FALSE(set(0, ServiceColumn::day, u"yesterday"_qs));
    EXPECT_EQ(troubled.count(), 3);
    EXPECT_TRUE(model.takeOut(0));
    EXPECT_TRUE(services().empty());
    model.undoStack().undo();
    ASSERT_EQ(services().size(), 1U);
    EXPECT_EQ(services()[0].words, "all six new");
    while (model.undoStack().canUndo())
        model.undoStack().undo();
    EXPECT_TRUE(services().empty());
}

TEST_F(KilnCareTest, AnEntryIsTypedOnThePage) {
    ServicePane pane(m_book.notebook());
    pane.show(m_kiln, {});
    present(pane, 700, 300);
    auto& table = *pane.findChild<EntryTable*>();
    table.setFocus();
    table.setCurrentIndex(pane.model().index(0, int(ServiceColumn::kind)));
    type(u"relay"_qs);
    press(Qt::Key_Return);
    ASSERT_EQ(services().size(), 1U);
    EXPECT_EQ(services()[0].kind, ServiceKind::relay);
    expectUsableByKeyboard(pane);
    for (auto* button : pane.findChildren<QPushButton*>())
        if (button->text().remove(u'&') == u"Undo"_qs)
            QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_TRUE(services().empty());
}

TEST_F(KilnCareTest, PastFiringsTellEnergyCostAndEvenness) {
    const FiringId first = fire(1);
    coldPacks(first, 4, 1);
    fire(3);
    m_book.addFiring(m_kiln, {.began = noonOfMarch(5), .live = true});
    KilnPast history(m_book->book());
    const auto firings = good(history.of(kiln()));
    ASSERT_EQ(firings.size(), 2U) << "what is fired now tells later";
    EXPECT_NEAR(firings[0].use.electricity->energy.kilowattHours(), 90, 0.5);
    EXPECT_EQ(firings[0].probe, m_probe);
    ASSERT_TRUE(firings[0].health.climb);
    ASSERT_TRUE(firings[0].evenness && firings[0].evenness->spread_C);
    EXPECT_EQ(firings[0].evenness->places.front().place, "middle shelf");
    EXPECT_GT(firings[0].evenness->spread_C->value, 2);
    EXPECT_FALSE(firings[1].evenness);
    KilnFiringsModel model(m_book->preferences());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(firings);
    EXPECT_EQ(model.index(1, int(KilnFiringColumn::energy)).data().toString(), u"90 kWh by the duty"_qs);
    EXPECT_EQ(model.index(1, int(KilnFiringColumn::cost)).data().toString(), u"27.00"_qs);
    EXPECT_TRUE(model.index(1, int(KilnFiringColumn::places)).data().toString().startsWith(u"middle shelf"));
}

TEST_F(KilnCareTest, AFiringThatChangedIsReadAnew) {
    const FiringId first = fire(1);
    KilnPast history(m_book->book());
    EXPECT_FALSE(good(history.of(kiln())).at(0).evenness);
    coldPacks(first, 4, 1);
    EXPECT_TRUE(good(history.of(kiln())).at(0).evenness);
    auto writer = m_book->writer();
    for (const double stand : {1000.0, 1088.0})
        good(writer.add(MeterStand{{},
                                   first,
                                   noonOfMarch(1) + std::chrono::hours(int(stand - 999)),
                                   stand,
                                   MeterUnit::kilowattHours,
                                   false}));
    EXPECT_NEAR(good(history.of(kiln())).at(0).use.electricity->energy.kilowattHours(), 88, 0.01)
        << "the meter's word before the channels'";
    Kiln dearer = kiln();
    dearer.pricePerKilowattHour = 0.5;
    expectGood(m_book->writer().alter(dearer));
    EXPECT_EQ(good(history.of(dearer)).at(0).use.pricePerKilowattHour, 0.5);
}

TEST_F(KilnCareTest, ThePageShowsWearAndOpensFirings) {
    const FiringId first = fire(1);
    coldPacks(first, 4, 1);
    for (int day = 3; day < 13; day += 2)
        fire(day);
    KilnsPage page(m_book.notebook(), m_theme);
    present(page);
    auto& tabs = *page.findChild<QTabWidget*>();
    tabs.setCurrentWidget(page.findChild<WearPane*>());
    const QString words = page.findChild<WearPane*>()->words();
    EXPECT_TRUE(words.contains(u"takes as long as five firings ago")) << words.toStdString();
    EXPECT_TRUE(words.contains(u"about 90 kWh")) << words.toStdString();
    EXPECT_TRUE(words.contains(u"T1: 6 firings")) << words.toStdString();
    QSignalSpy wanted(&page, &KilnsPage::firingWanted);
    auto& table = *page.findChild<WearPane*>()->findChild<FittedTable*>();
    table.setFocus();
    table.setCurrentIndex(table.model()->index(5, 0));
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted[0][0].toLongLong(), static_cast<qlonglong>(first));
    keepScreens(page, m_theme, QStringLiteral("kiln-wear"));
    tabs.setCurrentIndex(2);
    keepScreens(page, m_theme, QStringLiteral("kiln-service"));
}

} // namespace ringhold::test
