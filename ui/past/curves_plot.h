// Curves of firings in one plot.
#pragma once

#include "core/firing/records.h" // before the curve: see DEVELOPERS.md on moc and <compare>
#include "core/units/curve.h"

#include <QPen>
#include <QString>
#include <QWidget>

#include <memory>
#include <optional>
#include <utility>
#include <vector>

class QCPGraph;
class QCPItemLine;
class QCPItemText;
class QCustomPlot;

namespace ringhold {

class Preferences;
class Theme;

struct DrawnCurve {
    std::shared_ptr<const Curve> curve;
    std::optional<Instant> zero; ///< its hours count from here; without, it lies at its own time of day
    QString name;                ///< at its end; may be empty
    QPen pen;
};

/// A look, drawn as a cone.
struct DrawnLook {
    Instant at;
    Temperature temperature;
    double hour = 0;
};

/// Left and right move a cursor, + and - zoom, Home shows all again; wheel, drag and double click do the
/// same. However long the curves are, only what their picture shows is drawn. Preferences and theme outlive
/// it.
class CurvesPlot : public QWidget {
    Q_OBJECT

  public:
    CurvesPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    /// All curves with zeros, or none. Everything is shown again.
    void show(std::vector<DrawnCurve> curves, std::vector<DrawnLook> looks = {});
    /// What the cursor says; empty without one.
    QString cursorWords() const { return m_cursorWords; }
    /// The first and the last place in sight: seconds since 1970, or hours.
    std::pair<double, double> inSight() const;
    QSize minimumSizeHint() const override { return {240, 120}; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void connectPlot();
    void dress();
    void drawCurves();
    void nameCurves();
    void placeNames();
    void drawLooks();
    void showAll();
    void moveCursor(double place);
    QString wordsAt(double place) const;
    bool inHours() const { return !m_curves.empty() && m_curves.front().zero; }
    double placeOf(const DrawnCurve& curve, Instant at) const;
    Instant instantAt(const DrawnCurve& curve, double place) const;
    double degrees(Temperature t) const;

    const Preferences& m_preferences;
    const Theme& m_theme;
    QCustomPlot* m_plot;
    QCPItemLine* m_cursor;
    QCPItemText* m_cursorText;
    std::vector<DrawnCurve> m_curves;
    std::vector<DrawnLook> m_looks;
    std::vector<QCPItemText*> m_names;
    QString m_cursorWords;
};

} // namespace ringhold
