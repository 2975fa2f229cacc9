// Pages to be printed, the report of a firing above all: preview, page turning, paper, print, PDF.
#pragma once

#include "ui/report/page_flow.h"

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

/// Ctrl+S and Ctrl+P while it is in sight. Nothing that it asks stops anyone.
class ReportPane : public QWidget {
    Q_OBJECT

  public:
    explicit ReportPane(QWidget* parent = nullptr);

    using LayOut = std::function<PageDocument(Paper)>;

    /// The pages of a report.
    void setContent(const ReportContent& content);
    /// Any pages: laid out anew for each paper. The title is the file's and the print job's name.
    void setPages(const QString& title, LayOut layOut);
    void clear();
    bool isEmpty() const { return !m_layOut; }
    void setPaper(Paper paper);
    Paper paper() const { return m_paper; }
    ReportPreview& preview() { return *m_preview; }

    /// Asks where to, and writes it there.
    void savePdf();
    /// Asks which printer, and prints on its paper.
    void print();
    /// What was done, or went wrong, in the bar.
    void tell(const QString& words);

    /// What asks, so that tests can answer; what is handed over is called with the answer, or not at all.
    std::function<void(const QString& proposed, std::function<void(const QString&)> chosen)> askForFile;
    std::function<void(std::shared_ptr<QPrinter>, std::function<void()> go)> askForPrinter;

  Q_SIGNALS:
    /// The words of tell().
    void told(const QString& words);

  private:
    void layOutPages();
    void writeTo(const QString& file);
    void printOn(QPrinter& printer);
    void showPage();
    void buildBar();
    QToolButton* button(const QString& words, const QString& tip, const QKeySequence& keys);

    QString m_title;
    LayOut m_layOut;
    Paper m_paper;
    ReportPreview* m_preview;
    QWidget* m_bar;
    QLabel* m_pageLabel;
    QComboBox* m_paperBox;
    QToolButton* m_back = nullptr;
    QToolButton* m_forth = nullptr;
    QToolButton* m_pdf = nullptr;
    QToolButton* m_print = nullptr;
    QLabel* m_said;
};

} // namespace ringhold
