// The curve over its plan, as one plot: the whole firing or a close-up of it.
#pragma once

#include <QWidget>

#include <memory>
#include <vector>

class QCustomPlot;
class QCPGraph;
class QCPItemText;
class QCPItemLine;

namespace ringhold {

class FiringSession;
class ForecastMarks;
class Preferences;
class Temperature;
class Theme;
struct CurvePoint;
struct HoldBand;
struct Stretch;

/// Which part of the firing is shown unless the potter zooms.
enum class CurveSpan {
    whole,  ///< from the start to the end of the plan
    closeUp ///< the last two hours and the next one
};

/// Left and right move the cursor, + and - zoom, Home shows all again; the wheel and dragging do the same.
/// Session, preferences and theme outlive it.
class CurveView : public QWidget {
    Q_OBJECT

  public:
    CurveView(const FiringSession& session, const Preferences& preferences, const Theme& theme,
              CurveSpan span, QWidget* parent = nullptr);
    ~CurveView() override;

    /// Everything anew; cheap enough for every reading.
    void refresh();
    /// What the cursor says, "18:04  1 277 °C, plan 1 280 °C", and of a setting that it is at; empty without
    /// one.
    QString cursorWords() const { return m_cursorWords; }
    QSize minimumSizeHint() const override { return {240, 120}; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void build();
    void dress();
    void setCurve(QCPGraph* graph, const std::vector<CurvePoint>& curve) const;
    std::vector<CurvePoint> inSight(const std::vector<CurvePoint>& curve) const;
    void showReadings();
    void showPlan();
    void addBand(const Stretch& when, const HoldBand& band);
    void setTimes();
    void setDegrees();
    void moveCursor(double key);
    void zoom(double factor);
    double degrees(Temperature t) const;

    const FiringSession& m_session;
    const Preferences& m_preferences;
    const Theme& m_theme;
    CurveSpan m_span;
    QCustomPlot* m_plot;
    QCPGraph* m_plan = nullptr;
    QCPGraph* m_bandLow = nullptr;
    QCPGraph* m_bandHigh = nullptr;
    QCPGraph* m_pending = nullptr;
    QCPGraph* m_byHand = nullptr;
    QCPGraph* m_now = nullptr;
    std::vector<QCPGraph*> m_channels;
    std::unique_ptr<ForecastMarks> m_forecast;
    QCPItemText* m_cursorText = nullptr;
    QCPItemLine* m_cursorLine = nullptr;
    QString m_cursorWords;
    bool m_zoomed = false;
};

} // namespace ringhold
