// A firing whose instrument falls silent, and a loudspeaker that writes down what it is given: for tests of
// alarms.
#pragma once

#include "tests/support/live_climb.h"
#include "ui/sound/sounder.h"

#include <vector>

namespace ringhold::test {

/// Hears everything, or has no device.
class WritingSounder final : public Sounder {
  public:
    bool play(Sound sound) override {
        if (there)
            played.push_back(sound);
        return there;
    }
    void stop() override { ++stopped; }

    bool there = true;
    std::vector<Sound> played;
    int stopped = 0;
};

/// Its last reading of many, one a minute, came just now. After 3 min of silence that is a warning, after 5
/// urgent.
class SilentKiln {
  public:
    SilentKiln() : m_climb(60) {
        EXPECT_TRUE(m_climb.preferences().setAttendanceInterval(std::nullopt).ok());
        session().check();
    }

    FiringSession& session() { return m_climb.session(); }
    NotebookOnDisk& disk() { return m_climb.disk(); }
    Notebook& notebook() { return m_climb.disk().notebook(); }
    Preferences& preferences() { return m_climb.preferences(); }
    void wait(Duration time) {
        disk().clock().set(disk().clock().now() + time);
        for (const auto& session : notebook().sessions())
            session->check();
    }
    void waitMinutes(int minutes) { wait(std::chrono::minutes(minutes)); }
    /// One reading more, on the climb that it was in.
    void readAgain() {
        const auto at = disk().clock().now();
        const double minutes = inMinutes(at - LiveClimb::at(0));
        EXPECT_TRUE(session().firing().take({at, "T1", Quantity::temperature, 1100 + minutes}).ok());
        session().check();
    }

  private:
    LiveClimb m_climb;
};

} // namespace ringhold::test
