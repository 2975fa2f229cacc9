// The report of one firing as a page of the window: preview, page turning, paper, print, PDF.
#pragma once

#include "ui/report/page_paper.h"

#include <QWidget>

#include <functional>
#include <memory>

class QComboBox;
class QLabel;
class QPrinter;
class QToolButton;

namespace ringhold {

class ReportPreview;
struct ReportContent;

class ReportPane : public QWidget {
    Q_OBJECT

  public:
    explicit ReportPane(QWidget* parent = nullptr);

    void setContent(const ReportContent& content);
    void setPaper(Paper paper);
    Paper paper() const { return m_paper; }
    ReportPreview& preview() { return *m_preview; }

    /// Asks where to, and writes it there.
    void savePdf();
    /// Asks which printer, and prints on its paper.
    void print();

    /// What asks, so that tests can answer. Nothing means that the potter changed his mind.
    std::function<QString(const QString& proposed)> askForFile;
    std::function<bool(QPrinter&)> askForPrinter;

  Q_SIGNALS:
    /// What was done or went wrong, for a status line.
    void told(const QString& words);

  private:
    void layOut();
    void showPage();
    void buildBar();
    QToolButton* button(const QString& words, const QString& tip, const QKeySequence& keys);

    std::shared_ptr<const ReportContent> m_content;
    Paper m_paper;
    ReportPreview* m_preview;
    QWidget* m_bar;
    QLabel* m_pageLabel;
    QComboBox* m_paperBox;
    QToolButton* m_back = nullptr;
    QToolButton* m_forth = nullptr;
};

} // namespace ringhold
