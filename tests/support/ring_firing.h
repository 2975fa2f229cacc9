// A firing with growth rings, live in a book, for tests of what the ring clock tells.
#pragma once

#include "tests/core/book/sample_firing.h"
#include "tests/core/watch/curve_maker.h"
#include "tests/support/notebook_on_disk.h"

namespace ringhold::test {

/// Up to 1076 °C, half an hour there, then two rings: 10 min at 1036 °C and 15 min at 1076 °C. Noon to the
/// given minute.
class RingFiring {
  public:
    explicit RingFiring(int minutes) {
        expectGood(m_disk->preferences().setZone("UTC"));
        PastFiring firing;
        firing.began = noonOfMarch(1);
        firing.live = true;
        firing.plan = Plan{
            "rings",
            {Climb{celsius(1076), Rate::fromCelsiusPerHour(600)},
             Hold{celsius(1076), std::chrono::minutes(30), TemperatureDifference::fromCelsius(6)},
             Rings{2, celsius(1036), std::chrono::minutes(10), celsius(1076), std::chrono::minutes(15)}}};
        firing.curve = readEvery(curveOf({{0, 20},
                                          {106, 1076},
                                          {136, 1076},
                                          {142, 1036},
                                          {152, 1036},
                                          {156, 1076},
                                          {171, 1076},
                                          {177, 1036},
                                          {187, 1036},
                                          {191, 1076},
                                          {230, 1076}}),
                                 std::chrono::seconds(30));
        for (auto& point : firing.curve)
            point.at += firing.began - midnight;
        std::erase_if(firing.curve, [&](const CurvePoint& p) {
            return p.at > firing.began + std::chrono::minutes(minutes);
        });
        m_disk.addFiring(m_disk.addKiln("Heron"), firing);
        m_disk.clock().set(firing.began + std::chrono::minutes(minutes));
        EXPECT_TRUE(m_disk->resume().empty());
    }

    FiringSession& session() { return *m_disk->sessions().front(); }
    const Preferences& preferences() { return m_disk->preferences(); }
    NotebookOnDisk& disk() { return m_disk; }
    void wait(std::chrono::seconds time) { m_disk.clock().set(m_disk.clock().now() + time); }

  private:
    NotebookOnDisk m_disk;
};

} // namespace ringhold::test
