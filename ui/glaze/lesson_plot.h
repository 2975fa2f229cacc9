// Pieces of a glaze as points: how they came out against what was done to them.
#pragma once

#include "core/base/result.h" // before the lesson: see DEVELOPERS.md on moc and <compare>
#include "core/learn/learning.h"
#include "ui/plot/band_graph.h"
#include "ui/plot/themed_plot.h"

namespace ringhold {

/// With the fitted curve and its 90 % band; positions stand side by side. Preferences and theme outlive it.
class LessonPlot : public ThemedPlot {
    Q_OBJECT

  public:
    LessonPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    void show(std::vector<PieceResult> pieces, Lesson lesson, Judged judged);
    int points() const { return m_points; }

  protected:
    void dress() override;

  private:
    void draw();
    void drawPieces();
    void drawCurve();
    void nameAxes();
    double shown(double cause) const;

    BandGraph m_curve;
    QCPGraph* m_pieces;
    std::vector<PieceResult> m_results;
    std::vector<std::string> m_positions;
    Lesson m_lesson;
    Judged m_judged = Judged::largest;
    int m_points = 0;
};

} // namespace ringhold
