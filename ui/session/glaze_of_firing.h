// What is known of the glaze that a live firing is about: how its crystals grow and which excursions show.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/book/glaze_evidence.h"
#include "ui/common/latest_work.h"

#include <QObject>
#include <QTimer>

#include <optional>
#include <string>

namespace ringhold {

class FiringSession;
class Notebook;

struct KnownGlaze {
    std::string name; ///< of the glaze that most pieces carry alone
    GlazeKnowledge knowledge;
};

/// Read in a thread of its own by a connection of its own, since it takes whole firings to know: once, and a
/// while after the book changed. Session and notebook outlive it.
class GlazeOfFiring : public QObject {
    Q_OBJECT

  public:
    GlazeOfFiring(const FiringSession& session, Notebook& notebook, QObject* parent = nullptr);

    /// Nothing before it is read, and where no piece carries one glaze alone.
    const std::optional<KnownGlaze>& known() const { return m_known; }
    /// The glaze's own, once its crystals told it, else the published range.
    GrowthRate rate() const;

  Q_SIGNALS:
    void changed();

  private:
    void read();

    const FiringSession& m_session;
    Notebook& m_notebook;
    std::optional<KnownGlaze> m_known;
    QTimer m_later;
    LatestWork m_work;
};

} // namespace ringhold
