// The kilns page: kilns, their probes and what firings have told of those.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "ui/kiln/kiln_history.h"

#include <QWidget>

#include <optional>

class QLabel;
class QListView;
class QPushButton;
class QTabWidget;

namespace ringhold {

class FreshWhenSeen;
class KilnForm;
class KilnListModel;
class Notebook;
class OffsetPlot;
class ProbeModel;
class ProbeTable;
class Remark;
class SeriesModel;
class ServicePane;
class Theme;
class WearPane;

/// Notebook and theme outlive it.
class KilnsPage : public QWidget {
    Q_OBJECT

  public:
    KilnsPage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    void showKiln(KilnId kiln);

  Q_SIGNALS:
    void firingWanted(qlonglong firing);

  private:
    QWidget* makeKilnSheet(const Theme& theme);
    QWidget* makeTold(const Theme& theme);
    QWidget* makeProbeSheet(const Theme& theme);
    QLayout* makeProbeHead(const Theme& theme);
    void connectAll();
    void refresh();
    void pick(int row);
    void beginNew();
    void write(const Kiln& kiln);
    void showProbes();
    void showWear();
    void replaceProbe();
    void wroteProbe();
    void showSeries(int row);
    void tellButtons();
    std::optional<KilnId> current() const;

    Notebook& m_notebook;
    KilnListModel* m_kilns;
    ProbeModel* m_probes;
    SeriesModel* m_series;
    QListView* m_list;
    QPushButton* m_add;
    KilnForm* m_form;
    ProbeTable* m_probeTable;
    QPushButton* m_replace;
    Remark* m_trouble;
    QListView* m_seriesList;
    QLabel* m_start; ///< what the next firing starts from, by the series picked
    OffsetPlot* m_plot;
    QTabWidget* m_tabs;
    ServicePane* m_service;
    WearPane* m_wear;
    KilnPast m_history;
    std::vector<Probe> m_shownProbes;
    FreshWhenSeen* m_fresh;
};

} // namespace ringhold
