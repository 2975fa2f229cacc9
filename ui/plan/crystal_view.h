// The crystal that a plan would draw, as a picture.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_crystal.h"

#include <QWidget>

namespace ringhold {

class Theme;

/// To scale, with a bar that says how large; fills what room it has with what the crystal may be at the most.
class CrystalView : public QWidget {
    Q_OBJECT

  public:
    /// The theme outlives it.
    explicit CrystalView(const Theme& theme, QWidget* parent = nullptr);

    /// Hides without one.
    void show(const std::optional<PlanCrystal>& crystal);
    QSize sizeHint() const override { return {132, 132}; }
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& m_theme;
    std::optional<PlanCrystal> m_crystal;
};

/// A round length in mm, at most as long as that.
double barLength_mm(double atMost_mm);

} // namespace ringhold
