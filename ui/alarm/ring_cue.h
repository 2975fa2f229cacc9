// A soft sound before a dwell of the rings ends.
#pragma once

#include "core/firing/records.h"

#include <QObject>
#include <QTimer>

#include <vector>

namespace ringhold {

class AlarmCaller;
class Notebook;

/// Once for each dwell of each live firing; silent in the quiet hours. The words are on strip and card.
/// Notebook and caller outlive it.
class RingCue : public QObject {
    Q_OBJECT

  public:
    RingCue(Notebook& notebook, AlarmCaller& caller, QObject* parent = nullptr);

    /// Asks every ring clock; done once a second by itself.
    void listen();

  private:
    struct Dwell {
        FiringId firing{};
        int ring = 0;
        bool atLow = false;
        bool operator==(const Dwell&) const = default;
    };

    Notebook& m_notebook;
    AlarmCaller& m_caller;
    std::vector<Dwell> m_cued;
    QTimer m_tick;
};

} // namespace ringhold
