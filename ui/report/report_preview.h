// Finished pages on screen: one at a time, turned and zoomed by mouse or keyboard.
#pragma once

#include "ui/report/page_flow.h"

#include <QAbstractScrollArea>

#include <optional>

namespace ringhold {

/// Page Up and Page Down turn (as does scrolling beyond an edge), Home and End go to the first and last page,
/// + and - zoom, W fits the width, P the whole page. What is seen is drawn by the code that prints.
class ReportPreview : public QAbstractScrollArea {
    Q_OBJECT

  public:
    enum class Fit { width, page, none };

    explicit ReportPreview(QWidget* parent = nullptr);

    /// Stays on the page it was on, if the new document has it.
    void setDocument(std::optional<PageDocument> document);
    const std::optional<PageDocument>& document() const { return m_document; }

    int page() const { return m_page; }
    int pageCount() const { return m_document ? m_document->pageCount() : 0; }
    void setPage(int page); ///< from 0; taken to the nearest there is
    void fit(Fit fit);
    void zoomBy(double factor);
    /// Screen pixels for each point.
    double scale() const;

  Q_SIGNALS:
    void pageChanged();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

  private:
    void updateBars();
    void turn(int by);
    QSizeF sheet() const;
    double fitted() const;

    std::optional<PageDocument> m_document;
    int m_page = 0;
    Fit m_fit = Fit::width;
    double m_zoom = 1;
};

} // namespace ringhold
