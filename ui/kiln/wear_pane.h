// How a kiln and its probes wear, what its firings took, and how even they were.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "ui/kiln/kiln_history.h"

#include <QWidget>

class QLabel;

namespace ringhold {

class FittedTable;
class KilnFiringsModel;
class Preferences;

/// Preferences outlive it.
class WearPane : public QWidget {
    Q_OBJECT

  public:
    explicit WearPane(const Preferences& preferences, QWidget* parent = nullptr);

    /// Firings in time order.
    void show(const std::vector<KilnFiring>& firings, const std::vector<Probe>& probes,
              std::optional<Instant> elementsFitted);
    QString words() const;

  Q_SIGNALS:
    void firingWanted(qlonglong firing);

  private:
    const Preferences& m_preferences;
    KilnFiringsModel* m_firings;
    QLabel* m_words;
    FittedTable* m_table;
};

} // namespace ringhold
