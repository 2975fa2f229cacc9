// No disk comes between a reading and those who watch: neither one that is held nor a slow one.
#include "core/book/transaction.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/fed_instrument.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/session/notebook.h"

#include <QCoreApplication>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

using namespace std::chrono_literals;
using Wall = std::chrono::steady_clock;

/// Far under what a held book makes a writer wait, far over what a busy machine needs.
constexpr auto soon = 2s;

class FedFiring {
  public:
    FedFiring() {
        NewFiring firing;
        firing.kiln = disk.addKiln("Heron");
        firing.title = QStringLiteral("fed");
        session = good(disk->beginWith(firing, std::make_unique<FedInstrument>(fed)));
        began = disk.clock().now();
    }
    void say(int second, std::optional<double> celsius, const char* label = "T1",
             Quantity quantity = Quantity::temperature) {
        disk.clock().set(began + std::chrono::seconds(second));
        fed->say(disk.clock().now(), label, quantity, celsius);
    }

    NotebookOnDisk disk;
    FedInstrument* fed = nullptr;
    FiringSession* session = nullptr;
    Instant began;
};

TEST(SessionOnADisk, TakesReadingsOfNewChannelsWhileAnotherProgramHoldsTheBook) {
    FedFiring firing;
    const auto file = firing.disk->file();
    {
        const Book other = bookAt(file, Access::write);
        const auto held = good(WriteTransaction::begin(other));
        const auto from = Wall::now();
        firing.say(0, 1000);
        firing.say(1, 230, "V", Quantity::lineVolts);
        firing.say(2, 1001);
        firing.say(3, std::nullopt); // broken: an alarm
        QCoreApplication::processEvents();
        EXPECT_LT(Wall::now() - from, soon);
        EXPECT_EQ(firing.session->firing().controlCurve().size(), 2u);
        EXPECT_EQ(firing.session->firing().pendingCount(), 3u);
        const auto& alarms = firing.session->alarms();
        EXPECT_TRUE(alarms.find(AlarmCause::probeOpen)) << "judged without waiting for the disk";
    }
    EXPECT_TRUE(QTest::qWaitFor([&] { return firing.session->firing().pendingCount() == 0; }, 30'000));
    const BookReader reader = firing.disk->reader();
    const auto channels = good(reader.channels(firing.session->record().firing.id));
    ASSERT_EQ(channels.size(), 2u);
    EXPECT_EQ(good(reader.readings(channels[0].id)).size(), 2u);
}

TEST(SessionOnADisk, StrikesAReadingOfAChannelThatWasNew) {
    FedFiring firing;
    firing.say(0, 1000);
    firing.say(1, 2000);
    const auto channel = *firing.session->firing().controlChannel();
    const Instant wild = firing.began + 1s;
    EXPECT_TRUE(QTest::qWaitFor([&] { return firing.session->firing().pendingCount() == 0; }, 30'000));
    ASSERT_TRUE(firing.session->firing().strikeReading(channel, wild, wild).ok());
    const BookReader reader = firing.disk->reader();
    const auto channels = good(reader.channels(firing.session->record().firing.id));
    ASSERT_EQ(channels.size(), 1u);
    const auto readings = good(reader.readings(channels[0].id));
    ASSERT_EQ(readings.size(), 2u);
    EXPECT_FALSE(readings[0].struck);
    EXPECT_TRUE(readings[1].struck);
}

TEST(SessionOnADisk, IsNotHeldUpByASlowOne) {
    FaultyDisk slow;
    FedFiring firing;
    slow.slowDown(3s);
    const auto from = Wall::now();
    for (int second = 0; second < 20; ++second) {
        firing.say(second, 1000 + second, second % 2 ? "T1" : "T2");
        QCoreApplication::processEvents();
    }
    EXPECT_LT(Wall::now() - from, soon);
    EXPECT_EQ(firing.session->firing().lastReading()->temperature.celsius(), 1018);
    slow.slowDown(0s);
    EXPECT_TRUE(QTest::qWaitFor([&] { return firing.session->firing().pendingCount() == 0; }, 30'000));
}

} // namespace
} // namespace ringhold::test
