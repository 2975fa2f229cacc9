#include "tests/core/book/sample_firing.h"
#include "tests/support/fed_instrument.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/supply_line.h"
#include "ui/spread/supply_words.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// An electric kiln at 1000 °C, its volts and amps read every 10 s.
class SuppliedFiring {
  public:
    SuppliedFiring() {
        auto writer = disk->writer();
        Kiln kiln;
        kiln.name = "Heron";
        kiln.ratedPower = Power{11000};
        kiln.ratedVolts = Volts{240};
        kiln.pricePerKilowattHour = 0.35;
        NewFiring firing;
        firing.kiln = good(writer.add(kiln));
        firing.title = QStringLiteral("frost");
        session = good(disk->beginWith(firing, std::make_unique<FedInstrument>(fed)));
    }
    void run(int minutes, double volts, double amps) {
        for (int i = 0; i < minutes * 6; ++i) {
            wait(std::chrono::seconds(10));
            fed->say(disk.clock().now(), "T", Quantity::temperature, 1000 + i % 2);
            fed->say(disk.clock().now(), "V", Quantity::lineVolts, volts);
            fed->say(disk.clock().now(), "A", Quantity::lineAmps, amps);
        }
    }
    void wait(Duration time) { disk.clock().set(disk.clock().now() + time); }
    SupplyWords words() {
        return supplyWords(*session, disk->preferences(), session->watch().energy(session->now()));
    }

    NotebookOnDisk disk;
    FedInstrument* fed = nullptr;
    FiringSession* session = nullptr;
};

std::string plain(QString words) {
    for (const char16_t space : {u'\u2009', u'\u202f', u'\u00a0'})
        words.replace(QChar(space), QLatin1Char(' '));
    return words.toStdString();
}

TEST(SupplyWordsTest, AreNoneWithoutChannels) {
    SuppliedFiring firing;
    EXPECT_TRUE(firing.words().empty());
    EXPECT_EQ(spokenWords(firing.words()), QString());
}

TEST(SupplyWordsTest, TellVoltsAmpsAndTheirAge) {
    SuppliedFiring firing;
    firing.run(5, 240, 30);
    firing.wait(std::chrono::seconds(4));
    const auto words = firing.words();
    ASSERT_EQ(words.fields.size(), 2u);
    EXPECT_EQ(words.fields[0].name, QStringLiteral("volts"));
    EXPECT_EQ(plain(words.fields[0].value), "240 V");
    EXPECT_EQ(plain(words.fields[0].age), "4 s ago");
    EXPECT_TRUE(words.fields[0].live);
    EXPECT_EQ(plain(words.fields[1].value), "30.0 A");
    EXPECT_TRUE(words.evidence.isEmpty());
    firing.wait(std::chrono::minutes(2));
    EXPECT_FALSE(firing.words().fields[0].live) << "an old value is not shown as live";
    EXPECT_NE(plain(spokenWords(firing.words())).find("240 V, 2 min ago, no longer live"), std::string::npos);
}

TEST(SupplyWordsTest, SayWhatFewerVoltsComeTo) {
    SuppliedFiring firing;
    firing.run(60, 240, 30);
    firing.run(3, 228, 28.5);
    EXPECT_EQ(plain(firing.words().evidence), "5.0 % less volts than the usual 240 V is 9.75 % less power.");
}

TEST(SupplyWordsTest, TellTheEnergyAndItsCost) {
    SuppliedFiring firing;
    firing.run(60, 240, 25); // 6 kW
    const auto energy = plain(firing.words().energy);
    EXPECT_EQ(energy.rfind("6.0 kWh so far (2.0", 0), 0U) << energy; // 59 min 50 s of it at 0.35
    auto& live = firing.session->firing();
    ASSERT_TRUE(
        live.writeMeterStand(firing.session->now() - std::chrono::hours(1), 4000, MeterUnit::kilowattHours)
            .ok());
    ASSERT_TRUE(live.writeMeterStand(firing.session->now(), 4007, MeterUnit::kilowattHours).ok());
    EXPECT_EQ(plain(firing.words().energy), "7.0 kWh so far by the meter (2.45)");
}

TEST(SupplyWordsTest, TellTheOxygenWhereTheProbeIsHot) {
    SuppliedFiring firing;
    firing.run(1, 240, 30);
    firing.fed->say(firing.session->now(), "O", Quantity::oxygenMillivolts, 40);
    const auto words = firing.words();
    ASSERT_EQ(words.fields.size(), 3u);
    EXPECT_EQ(words.fields[2].name, QStringLiteral("oxygen probe"));
    // E = RT/4F ln(0.209/p): at 1273.15 K, 27.43 mV for each factor e
    EXPECT_EQ(plain(words.fields[2].value), "40 mV, about 4.9 % oxygen");
}

TEST(SupplyLineTest, TakesTheWritingLineForAMetersStand) {
    SuppliedFiring firing;
    firing.run(2, 240, 30);
    Theme theme;
    theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    SpreadPage page(*firing.session, firing.disk.notebook(), theme);
    present(page, 1180, 720);
    auto* line = page.findChild<SupplyLine*>();
    ASSERT_TRUE(line);
    EXPECT_TRUE(line->isVisible());
    keepScreens(page, theme, QStringLiteral("supply"));
    line->findChild<QToolButton*>()->click();
    type(QStringLiteral("4711.5"));
    auto* written = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(written);
    EXPECT_EQ(written->text(), QStringLiteral("meter: 4711.5"));
    press(Qt::Key_Return);
    const auto& stands = firing.session->record().meterStands;
    ASSERT_EQ(stands.size(), 1u);
    EXPECT_EQ(stands[0].stand, 4711.5);
    EXPECT_TRUE(firing.session->record().settings.empty());
}

} // namespace
} // namespace ringhold::test
