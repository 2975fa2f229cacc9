// One past firing opened in full.
#pragma once

#include "ui/past/opened_firing.h"

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QTabWidget;

namespace ringhold {

class ColdPackEntry;
class CurvesPlot;
class Heading;
class MeterEntry;
class Notebook;
class PastLog;
class Theme;
class WareModel;

/// Curve, log, cones as last seen with what the cold pack shows, ware. Notebook and theme outlive it.
class FiringView : public QWidget {
    Q_OBJECT

  public:
    FiringView(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// Null shows nothing.
    void show(std::shared_ptr<const OpenedFiring> firing);

    /// Opens a window to type in what was written on paper.
    void typePaperLog();

  Q_SIGNALS:
    /// Lines were added or struck, the cold pack was read, or a meter: the book has changed.
    void written();
    void troubled(const QString& what);

  private:
    QWidget* makeCones();
    QWidget* makeWare();
    void draw();
    void showHead();
    void showCurves();
    void showCones();
    void showWare();

    Notebook& m_notebook;
    const Theme& m_theme;
    Heading* m_title;
    QLabel* m_what;
    CurvesPlot* m_plot;
    QTabWidget* m_tabs;
    PastLog* m_log;
    WareModel* m_ware;
    QHBoxLayout* m_packs;
    ColdPackEntry* m_cold;
    MeterEntry* m_meter;
    std::shared_ptr<const OpenedFiring> m_firing;
};

} // namespace ringhold
