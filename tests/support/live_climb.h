// A firing on its way to cone 9, live in a book, for tests of what the spread tells.
#pragma once

#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"

#include <utility>

namespace ringhold::test {

/// From 1100 °C at 12:00 UTC at 60 °C/h, a reading a minute; the plan waits for cone 9, drops to 1076 °C and
/// holds there. Cones 8, 9 and 10 stand on the middle shelf; no look so far. Times are shown in UTC.
class LiveClimb {
  public:
    explicit LiveClimb(int minutes = 150) : LiveClimb({{0, 1100}, {minutes, 1100.0 + minutes}}) {}
    /// Through the corners (minute, °C) instead, and by another plan, or none, if wanted.
    explicit LiveClimb(const std::vector<std::pair<int, double>>& corners,
                       const std::optional<Plan>& planned = LiveClimb::plan()) {
        EXPECT_TRUE(m_disk->preferences().setZone("UTC").ok());
        m_kiln = m_disk.addKiln("Heron");
        m_probe = m_disk.addProbe(m_kiln, "spyhole side");
        auto writer = m_disk->writer();
        Firing firing = firingFrom(m_kiln, "frost", at(0));
        firing.plan = planned;
        const auto id = good(writer.add(firing));
        const auto channel = good(writer.add(Channel{{}, id, Quantity::temperature, "T1", m_probe}));
        std::vector<Reading> readings;
        Curve curve;
        for (const auto& [minute, degrees] : corners)
            curve.push_back({at(minute), Temperature::fromCelsius(degrees)});
        for (Instant when = at(0); when <= curve.back().at; when += std::chrono::minutes(1))
            readings.push_back(
                {channel, when, temperatureAt(curve, when).celsius(), Origin::instrument, false});
        EXPECT_EQ(good(writer.add(readings)), readings.size());
        good(writer.add(Pack{{}, id, "middle shelf", ConeType::selfSupporting, {"8", "9", "10"}, false}));
        m_disk.clock().set(curve.back().at);
        EXPECT_TRUE(m_disk->resume().empty());
    }

    static Plan plan() {
        return {"climb",
                {ConeWait{"9", Rate::fromCelsiusPerHour(60), Temperature::fromCelsius(1290),
                          Temperature::fromCelsius(1300), std::chrono::hours(1)},
                 Drop{Temperature::fromCelsius(1076), std::nullopt},
                 Hold{Temperature::fromCelsius(1076), std::chrono::hours(3),
                      TemperatureDifference::fromCelsius(3)}}};
    }
    static Instant at(int minute) { return noonOfMarch(1) + std::chrono::minutes(minute); }

    FiringSession& session() { return *m_disk->sessions().front(); }
    Preferences& preferences() { return m_disk->preferences(); }
    NotebookOnDisk& disk() { return m_disk; }
    KilnId kiln() const { return m_kiln; }
    ProbeId probe() const { return m_probe; }
    LookId look(int minute, const std::string& cone, double hour) {
        return good(
            session().firing().writeLook(session().record().packs.front().id, at(minute), cone, hour));
    }

  private:
    NotebookOnDisk m_disk;
    KilnId m_kiln{};
    ProbeId m_probe{};
};

/// Without the thin spaces.
inline std::string plainWords(QString words) {
    for (const char16_t space : {u'\u2009', u'\u202f', u'\u00a0'})
        words.replace(QChar(space), QLatin1Char(' '));
    return words.toStdString();
}

} // namespace ringhold::test
