// The line under the curve that tells of volts, amps, oxygen and energy.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/spread/supply_words.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QToolButton;

namespace ringhold {

class Theme;

/// Seen once there is something to tell. A value that is not live is struck and pale, its age in words beside
/// it. Session, preferences and theme outlive it.
class SupplyLine : public QWidget {
    Q_OBJECT

  public:
    SupplyLine(const FiringSession& session, const Preferences& preferences, const Theme& theme,
               QWidget* parent = nullptr);

    const SupplyWords& words() const { return m_words; }
    void refresh();

  Q_SIGNALS:
    /// A meter's stand is to be written.
    void meterWanted();

  private:
    void reckon();
    void dress();
    QString marked(const SupplyField& field) const;

    const FiringSession& m_session;
    const Preferences& m_preferences;
    const Theme& m_theme;
    QLabel* m_now;
    QLabel* m_energyWords;
    QToolButton* m_meter;
    SupplyWords m_words;
    FiringEnergy m_energy;
    QTimer m_tick;
    QTimer m_reckon; ///< the energy to come costs some milliseconds
};

} // namespace ringhold
