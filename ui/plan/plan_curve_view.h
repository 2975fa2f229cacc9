// The curve that a plan means to draw, with the temperatures at which crystals grow and the cones' ends.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_curve_drawing.h"

#include <QWidget>

#include <optional>

class QCustomPlot;
class QLabel;

namespace ringhold {

class Preferences;
class Theme;

/// Hours from the start across, the chosen unit upwards. The arrow keys move a mark along the curve, the
/// words below say what is planned there.
class PlanCurveView : public QWidget {
    Q_OBJECT

  public:
    /// Both outlive it.
    PlanCurveView(const Theme& theme, const Preferences& preferences, QWidget* parent = nullptr);

    void show(const Plan& plan, const PlannedCurve& planned);
    /// Where the model kiln could not follow; belongs to the curve shown last.
    void showKiln(const PlanEnergy& energy);
    /// How the kiln would go as it was in past firings, as a band; belongs to the curve shown last.
    void showRehearsal(const std::optional<Rehearsal>& rehearsal);
    /// No curve, and why.
    void showNothing(const QString& why);
    /// Drawn thicker; the words below tell of it.
    void selectStep(std::optional<std::size_t> step);
    /// Hours after the start; moves the mark there.
    void markAt(std::optional<double> hours);

    /// The curve in words, as a screen reader has it.
    QString curveInWords() const;

  Q_SIGNALS:
    void stepPicked(int step); ///< clicked on in the curve

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void draw();
    void tell();
    bool moveMark(int key, Qt::KeyboardModifiers modifiers);
    void pickAt(double hours);
    double markOrSelection() const;
    QString legInWords(const PlannedLeg& leg) const;

    const Theme& m_theme;
    const Preferences& m_preferences;
    QCustomPlot* m_plot;
    QLabel* m_words;
    DrawnPlan m_shown;
    QString m_why;
};

} // namespace ringhold
