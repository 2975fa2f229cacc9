// Text on a page: the same lines on every device, whole when it is taken out of a PDF.
#pragma once

#include <QColor>
#include <QFont>
#include <QPointF>
#include <QString>

#include <memory>

class QPainter;
class QTextLayout;

namespace ringhold {

enum class PageFace {
    text,   ///< for everything
    heading ///< for headings; one with figures is set in the text's face all the same
};

/// How words are set; sizes in points.
struct PageType {
    double points = 9;
    QColor ink;
    QFont::Weight weight = QFont::Normal;
    PageFace face = PageFace::text;
    bool struck = false;
    double leading = 1.36; ///< from line to line, in sizes
};

/// A paragraph, broken into lines at a width in points; '\n' begins a new line. Cheap to copy. Figures stay
/// with their units. Ligatures are off: taken out of a PDF, they would not be the letters that were written.
class PageText {
  public:
    PageText(const QString& words, const PageType& type, double width,
             Qt::Alignment alignment = Qt::AlignLeft);

    double height() const { return m_height; }
    /// The widest of its lines.
    double naturalWidth() const { return m_naturalWidth; }
    /// From the top to where the first line stands.
    double baseline() const { return m_baseline; }
    /// The painter's unit must be the point.
    void paint(QPainter& painter, QPointF topLeft) const;

    static double widthOf(const QString& words, const PageType& type);

  private:
    std::shared_ptr<QTextLayout> m_layout;
    QColor m_ink;
    double m_height = 0;
    double m_naturalWidth = 0;
    double m_baseline = 0;
};

} // namespace ringhold
