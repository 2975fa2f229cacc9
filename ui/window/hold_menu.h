// The potter's word on the hold: bands to be alarmed on, as a menu.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/watch/hold_statistics.h"

#include <QObject>

class QMenu;

namespace ringhold {

class FiringPages;
class Preferences;

/// Fills the menu with bands for the hold of the firing that is shown whenever it opens; choosing one writes
/// the setting "hold", a line of the log. Its arguments outlive it.
class HoldMenu : public QObject {
    Q_OBJECT

  public:
    HoldMenu(FiringPages& pages, const Preferences& preferences, QMenu& menu, QObject* parent);

  Q_SIGNALS:
    void troubled(const QString& what);

  private:
    void fill();
    void addBand(const HoldBand& band, const QString& words, bool current);
    void addGlazeBand(const HoldBand& hold);
    void say(const std::string& value);

    FiringPages& m_pages;
    const Preferences& m_preferences;
    QMenu& m_menu;
};

} // namespace ringhold
