#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "tests/support/screens.h"
#include "ui/kiln/kiln_list_model.h"
#include "ui/kiln/kilns_page.h"
#include "ui/kiln/probe_model.h"
#include "ui/kiln/probe_table.h"
#include "ui/kiln/series_model.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

namespace ringhold::test {
namespace {

class KilnsPageTest : public testing::Test {
  protected:
    void start() { present(m_page); }
    QLineEdit& field(const QString& name) {
        for (auto* line : m_page.findChildren<QLineEdit*>())
            if (line->accessibleName() == name)
                return *line;
        ADD_FAILURE() << "no field " << name.toStdString();
        return *m_page.findChild<QLineEdit*>();
    }
    void fill(const QString& name, const QString& text) {
        field(name).setFocus();
        field(name).selectAll();
        press(Qt::Key_Delete);
        type(text);
        press(Qt::Key_Return);
    }
    ProbeTable& probes() { return *m_page.findChild<ProbeTable*>(); }
    void goTo(int row, ProbeColumn column) {
        probes().setFocus();
        probes().setCurrentIndex(probes().model()->index(row, static_cast<int>(column)));
    }
    void click(const QString& words) {
        for (auto* button : m_page.findChildren<QPushButton*>())
            if (button->text().remove(u'&') == words)
                return QTest::mouseClick(button, Qt::LeftButton);
        ADD_FAILURE() << "no button " << words.toStdString();
    }
    QString warnings() { return warningsOn(m_page); }
    Kiln kiln() { return good(m_book->reader().kilns()).at(0); }
    std::vector<Probe> kept() { return good(m_book->reader().probes(kiln().id)); }
    QString series(int row) { return m_page.findChild<SeriesModel*>()->index(row).data().toString(); }
    void tell(KilnId kiln, ProbeId probe, int firings) {
        for (int i = 0; i < firings; ++i) {
            const Instant at = noonOfMarch(i + 1);
            const FiringId firing = good(m_book->writer().add(firingFrom(kiln, "past", at, at)));
            expectGood(m_book->writer().file({firing, kiln, probe, "middle shelf", at,
                                              TemperatureDifference::fromCelsius(6 + i % 3),
                                              TemperatureDifference::fromCelsius(2)}));
        }
    }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnsPage m_page{m_book.notebook(), m_theme};
};

} // namespace

TEST_F(KilnsPageTest, AnEmptyBookAsksForItsFirstKiln) {
    start();
    EXPECT_TRUE(field(u"Name"_qs).hasFocus());
    fill(u"Name"_qs, u"Heron"_qs);
    ASSERT_EQ(good(m_book->reader().kilns()).size(), 1U);
    EXPECT_EQ(kiln().name, "Heron");
    EXPECT_EQ(kiln().fuel, Fuel::electric);
    EXPECT_EQ(m_page.findChild<KilnListModel*>()->rowCount(), 1);
    EXPECT_TRUE(probes().isEnabled());
}

TEST_F(KilnsPageTest, AllFieldsAreWrittenAsTheyAreLeft) {
    m_book.addKiln("Heron");
    start();
    QSignalSpy told(&m_book.notebook(), &Notebook::bookChanged);
    fill(u"Volume, L"_qs, u"150,5"_qs);
    fill(u"Rated power, kW"_qs, u"9.6"_qs);
    fill(u"at volts"_qs, u"230"_qs);
    fill(u"Price of a kWh"_qs, u"0.31"_qs);
    fill(u"Note"_qs, u"drafty lid"_qs);
    EXPECT_EQ(kiln().volume_L, 150.5);
    EXPECT_EQ(kiln().ratedPower, Power{9600});
    EXPECT_EQ(kiln().ratedVolts, Volts{230});
    EXPECT_EQ(kiln().pricePerKilowattHour, 0.31);
    EXPECT_EQ(kiln().note, "drafty lid");
    EXPECT_EQ(told.count(), 5);
    fill(u"Volume, L"_qs, {});
    EXPECT_FALSE(kiln().volume_L);
}

TEST_F(KilnsPageTest, WhatMakesNoSenseIsSaidBelowItsFieldAndNotWritten) {
    m_book.addKiln("Heron");
    start();
    for (const char* wrong : {"big", "0", "-5", "nan", "inf"}) {
        fill(u"Volume, L"_qs, QString::fromLatin1(wrong));
        EXPECT_TRUE(warnings().contains(u"A number above 0")) << wrong;
        EXPECT_FALSE(kiln().volume_L);
    }
    fill(u"Volume, L"_qs, u"150"_qs);
    EXPECT_TRUE(warnings().isEmpty());
    fill(u"Name"_qs, u" "_qs);
    EXPECT_TRUE(warnings().contains(u"A kiln has a name"));
    EXPECT_EQ(kiln().name, "Heron");
    EXPECT_EQ(kiln().volume_L, 150);
}

TEST_F(KilnsPageTest, ANameThatIsTakenIsRefused) {
    m_book.addKiln("Heron");
    start();
    click(u"Add a kiln"_qs);
    fill(u"Name"_qs, u"heron"_qs);
    EXPECT_TRUE(warnings().contains(u"a kiln of that name")) << warnings().toStdString();
    EXPECT_EQ(good(m_book->reader().kilns()).size(), 1U);
    fill(u"Name"_qs, u"Smoke"_qs);
    EXPECT_EQ(good(m_book->reader().kilns()).size(), 2U);
}

TEST_F(KilnsPageTest, AFigureThatWasNotTouchedKeepsEveryDigit) {
    Kiln exact = kilnCalled("Heron");
    exact.ratedPower = Power{9599.123456789012};
    exact.volume_L = 150.12345678901234;
    exact.id = good(m_book->writer().add(exact));
    start();
    fill(u"Note"_qs, u"drafty"_qs);
    EXPECT_EQ(kiln().ratedPower, exact.ratedPower);
    EXPECT_EQ(kiln().volume_L, exact.volume_L);
}

TEST_F(KilnsPageTest, AGasKilnHasNoElectricFields) {
    m_book.addKiln("Heron");
    start();
    auto* fuel = m_page.findChild<QComboBox*>();
    fuel->setFocus();
    EXPECT_TRUE(field(u"at volts"_qs).isVisible());
    type(u"g"_qs);
    EXPECT_EQ(kiln().fuel, Fuel::gas);
    EXPECT_FALSE(field(u"at volts"_qs).isVisible());
}

TEST_F(KilnsPageTest, AProbeIsTypedWithEnterAlone) {
    m_book.addKiln("Heron");
    start();
    goTo(0, ProbeColumn::label);
    type(u"T1"_qs);
    press(Qt::Key_Return);
    type(u"s"_qs);
    type(u"top, left"_qs);
    press(Qt::Key_Return);
    type(u"2026-01-15"_qs);
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    ASSERT_EQ(kept().size(), 1U);
    const Probe probe = kept()[0];
    EXPECT_EQ(probe.label, "T1");
    EXPECT_EQ(probe.type, ThermocoupleType::S);
    EXPECT_EQ(probe.position, "top, left");
    EXPECT_EQ(probe.fitted, *parseIso8601("2026-01-15T00:00", "Europe/Lisbon"));
    EXPECT_FALSE(probe.retired);
    EXPECT_EQ(probes().currentIndex().row(), 1);
}

TEST_F(KilnsPageTest, DaysThatMakeNoSenseAreRefused) {
    m_book.addProbe(m_book.addKiln("Heron"), "T1");
    start();
    auto* model = probes().model();
    const auto set = [&](ProbeColumn column, const char* text) {
        return model->setData(model->index(0, static_cast<int>(column)), QString::fromLatin1(text));
    };
    EXPECT_FALSE(set(ProbeColumn::fitted, "15.1.2026"));
    EXPECT_TRUE(warnings().contains(u"A day is written as"));
    EXPECT_TRUE(set(ProbeColumn::fitted, "2026-01-15"));
    EXPECT_TRUE(warnings().isEmpty());
    EXPECT_FALSE(set(ProbeColumn::retired, "2026-01-14"));
    EXPECT_TRUE(warnings().contains(u"not retired before it is fitted"));
    EXPECT_FALSE(set(ProbeColumn::type, "Q"));
    EXPECT_FALSE(set(ProbeColumn::label, " "));
    EXPECT_TRUE(set(ProbeColumn::fitted, ""));
    EXPECT_FALSE(kept()[0].fitted);
}

TEST_F(KilnsPageTest, ATriedProbeIsReplacedNotMoved) {
    const KilnId heron = m_book.addKiln("Heron");
    tell(heron, m_book.addProbe(heron, "T1"), 4);
    start();
    EXPECT_TRUE(series(0).startsWith(u"T1 · middle shelf reads 7")) << series(0).toStdString();
    goTo(0, ProbeColumn::position);
    type(u"elsewhere"_qs);
    press(Qt::Key_Return);
    EXPECT_TRUE(warnings().contains(u"use “Replace”"));
    EXPECT_EQ(kept()[0].position, "top");
    goTo(0, ProbeColumn::label);
    click(u"Replace"_qs);
    ASSERT_EQ(kept().size(), 2U);
    EXPECT_EQ(kept()[0].retired, m_book.clock().now());
    EXPECT_EQ(kept()[1].fitted, m_book.clock().now());
    EXPECT_FALSE(kept()[1].retired);
    EXPECT_TRUE(series(1).startsWith(u"T1 not enough firings yet: 0 of 3")) << series(1).toStdString();
}

TEST_F(KilnsPageTest, ModelsKeepTheirContract) {
    using Mode = QAbstractItemModelTester::FailureReportingMode;
    const QAbstractItemModelTester kilns(m_page.findChild<KilnListModel*>(), Mode::Fatal);
    const QAbstractItemModelTester probeRows(m_page.findChild<ProbeModel*>(), Mode::Fatal);
    const QAbstractItemModelTester seriesRows(m_page.findChild<SeriesModel*>(), Mode::Fatal);
    m_book.addProbe(m_book.addKiln("Heron"), "T1");
    start();
    goTo(1, ProbeColumn::label);
    type(u"T2"_qs);
    press(Qt::Key_Return);
    goTo(0, ProbeColumn::label);
    click(u"Replace"_qs);
    click(u"Add a kiln"_qs);
    fill(u"Name"_qs, u"Smoke"_qs);
    EXPECT_EQ(m_page.findChild<KilnListModel*>()->rowCount(), 2);
}

TEST_F(KilnsPageTest, IsUsableByKeyboard) {
    const KilnId heron = m_book.addKiln("Heron");
    tell(heron, m_book.addProbe(heron, "T1"), 3);
    start();
    goTo(0, ProbeColumn::label);
    expectUsableByKeyboard(m_page);
}

TEST_F(KilnsPageTest, IsPictured) {
    Kiln heron = kilnCalled("Heron");
    heron.volume_L = 150;
    heron.ratedPower = Power{9600};
    heron.ratedVolts = Volts{230};
    heron.pricePerKilowattHour = 0.31;
    heron.id = good(m_book->writer().add(heron));
    tell(heron.id, m_book.addProbe(heron.id, "T1"), 6);
    m_book.addProbe(heron.id, "T2", ThermocoupleType::K);
    m_book.addKiln("Smoke", Fuel::gas);
    start();
    goTo(0, ProbeColumn::label);
    keepScreens(m_page, m_theme, u"kilns"_qs);
    m_page.resize(924, 520);
    keepScreens(m_page, m_theme, u"kilns-small"_qs);
}

} // namespace ringhold::test
