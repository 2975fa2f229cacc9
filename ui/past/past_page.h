// The past page: all firings of the book on the left; on the right one of them or its report, or several
// laid over each other.
#pragma once

#include "ui/past/opened_firing.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTabBar;

namespace ringhold {

class ExportRow;
class FilterFields;
class FiringsModel;
class FiringView;
class FittedTable;
class FoundFirings;
class FreshWhenSeen;
class LaidOverView;
class Notebook;
class Remark;
class ReportView;
class Theme;

/// Arrows open firings, Space ticks, Enter goes back to the opened one. Notebook and theme outlive it.
class PastPage : public QWidget {
    Q_OBJECT

  public:
    PastPage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// Opens that firing.
    void open(FiringId firing);
    /// Opens its report; without one, that of the firing opened last.
    void openReport(std::optional<FiringId> firing = std::nullopt);

    /// For the firing opened last.
    void typePaperLog();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    enum View { oneFiring, report, laidOver };
    QWidget* makeList(const Theme& theme);
    QWidget* makeReading();
    void connectAll();
    void refresh();
    void find();
    void openCurrent();
    void layTicked();
    void ticksChanged();
    void tellCounts();
    bool tickCurrent();
    std::optional<FiringId> current() const;
    void show(View view);

    Notebook& m_notebook;
    const Theme& m_theme;
    FiringsModel* m_firings;
    FoundFirings* m_found;
    OpenedFirings m_opened;
    QLineEdit* m_filter;
    FilterFields* m_fields;
    QLabel* m_counts;
    FittedTable* m_table;
    QPushButton* m_untick;
    QTabBar* m_views;
    QStackedWidget* m_stack;
    FiringView* m_firing;
    ReportView* m_report;
    LaidOverView* m_laid;
    ExportRow* m_export;
    Remark* m_trouble;
    FreshWhenSeen* m_fresh;
    QTimer m_openSoon; ///< while arrows are held nothing is read
};

} // namespace ringhold
