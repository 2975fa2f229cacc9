// Firings laid over each other, and what differs between them.
#pragma once

#include "ui/past/laid_over.h"

#include <QWidget>

class QComboBox;
class QLabel;

namespace ringhold {

class CurvesPlot;
class DifferenceModel;
class FittedTable;
class Preferences;
class Remark;
class Theme;

/// Preferences and theme outlive it.
class LaidOverView : public QWidget {
    Q_OBJECT

  public:
    LaidOverView(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    void show(std::vector<std::shared_ptr<const OpenedFiring>> firings);

  private:
    void lay();
    void tellNote();

    const Theme& m_theme;
    DifferenceModel* m_differences;
    QComboBox* m_alignment;
    CurvesPlot* m_plot;
    Remark* m_remarks;
    FittedTable* m_table;
    QLabel* m_note;
    std::vector<std::shared_ptr<const OpenedFiring>> m_firings;
};

/// The pen of the i-th curve: colours and strokes that both change from one to the next, all twenty
/// different.
QPen layPen(std::size_t index, const Theme& theme);

} // namespace ringhold
