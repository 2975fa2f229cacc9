// The crystal that a live firing is drawing, reckoned as its report will.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/report/report_holds.h"
#include "ui/plan/plan_crystal.h"

#include <QObject>
#include <QTimer>

#include <optional>
#include <vector>

namespace ringhold {

class FiringSession;
class Preferences;

struct LiveCrystal {
    PlanCrystal drawn;                ///< so far
    std::vector<ReportedRings> rings; ///< with their radii
    std::vector<ReportedHold> holds;  ///< with the radii of their longest excursions
    CrystalGrowth ahead;              ///< so far and on as the plan goes on
    Instant began;                    ///< of growth
};

/// By that growth rate, the probe's offset as the cones told it taken off. Nothing before there is half a
/// millimetre to see across. Some milliseconds.
std::optional<LiveCrystal> liveCrystal(const FiringSession& session,
                                       const GrowthRate& rate = publishedGrowthRate());

/// "Ring 1: about 6.2 mm out (1.2 to 12.9), 0.9 mm wide; 8.0 min at 1 041 °C, then 15.0 min at 1 076 °C."
QStringList ringLines(const LiveCrystal& crystal, const Preferences& preferences);
/// Where the longest excursion of each hold lies.
QStringList excursionLines(const LiveCrystal& crystal, const Preferences& preferences);
/// Where one dip would date the crystal, while it lies ahead; else "".
QString markerLine(const LiveCrystal& crystal, Instant now, const Preferences& preferences);
/// When to dip for a ring so far out, above 0.
QString dipLine(const LiveCrystal& crystal, double radius_mm, Instant now, const Preferences& preferences);

/// Keeps the crystal fresh, a few seconds behind the readings. The session outlives it.
class LiveCrystalModel : public QObject {
    Q_OBJECT

  public:
    explicit LiveCrystalModel(const FiringSession& session, QObject* parent = nullptr);
    const std::optional<LiveCrystal>& crystal() const { return m_crystal; }
    const FiringSession& session() const { return m_session; }
    void refresh();
    /// The published range until this is called.
    void setRate(const GrowthRate& rate);

  Q_SIGNALS:
    void changed();

  private:
    const FiringSession& m_session;
    GrowthRate m_rate = publishedGrowthRate();
    std::optional<LiveCrystal> m_crystal;
    QTimer m_later;
};

} // namespace ringhold
