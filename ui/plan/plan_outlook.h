// What a plan will draw: the right side of the plan page.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan_energy.h"
#include "ui/plan/plan_basis.h"

#include <QTimer>
#include <QWidget>

#include <optional>

class QPushButton;

namespace ringhold {

class BasisChooser;
class CrystalView;
class FiguresView;
class Notebook;
class PlanCurveView;
class PlanModel;
class RehearsalView;
class Theme;

/// Curve, figures, crystal and rehearsal of the model's plan on the basis chosen here. It tells the model how
/// long each step takes.
class PlanOutlook : public QWidget {
    Q_OBJECT

  public:
    /// All three outlive it.
    PlanOutlook(Notebook& notebook, PlanModel& model, const Theme& theme, QWidget* parent = nullptr);

    /// Reckons the model's plan anew; `any` is false where no plan is chosen.
    void reckon(bool any);
    /// Reckons the energy now instead of when typing pauses.
    void reckonEnergy();
    /// Whether the plan is sound and drawn.
    bool drawn() const { return m_planned.has_value(); }
    const PlanBasis& basis() const;
    void selectStep(std::optional<std::size_t> step);

  Q_SIGNALS:
    void basisChanged();
    void stepPicked(int step); ///< clicked on in the curve
    void cardWanted();
    void refused(const QString& why);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* makeReckoned();
    void showPlanned();
    void showFigures();
    void showCrystal();

    Notebook& m_notebook;
    PlanModel& m_model;
    std::optional<PlannedCurve> m_planned;
    std::optional<PlanEnergy> m_energy;
    QTimer m_typingPause;
    BasisChooser* m_basis;
    PlanCurveView* m_curve;
    RehearsalView* m_rehearsal;
    FiguresView* m_figures;
    CrystalView* m_crystal;
    QPushButton* m_card;
};

} // namespace ringhold
