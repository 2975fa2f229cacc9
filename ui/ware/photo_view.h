// A photo with marks set on it.
#pragma once

#include "ui/ware/photo_measure.h"

#include <QImage>
#include <QWidget>

namespace ringhold {

class Theme;

/// A click sets the next mark, a drag moves one that is there, the wheel zooms, the right button drags the
/// picture. By keyboard: arrows move the cross by a pixel of the screen (with Shift by twelve), Enter or
/// Space set a mark there, Backspace takes the last back, + and - zoom at the cross, Home shows all. A loupe
/// shows what is under the cross. The theme outlives it.
class PhotoView : public QWidget {
    Q_OBJECT

  public:
    explicit PhotoView(const Theme& theme, QWidget* parent = nullptr);

    void show(const QImage& photo);
    const QImage& photo() const { return m_photo; }
    const PhotoMarks& marks() const { return m_marks; }
    void takeBack();
    void startOver();
    /// Of a mark as it is set at this zoom: a pixel and a half of the screen, or one of the picture.
    double markError_px() const;
    /// In pixels of the picture.
    QPointF cross() const { return m_cross; }
    QPointF toScreen(QPointF onPhoto) const;
    QPointF toPhoto(QPointF onScreen) const;
    QSize minimumSizeHint() const override { return {320, 240}; }

  Q_SIGNALS:
    void marksChanged();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void fit();
    double scale() const { return m_fitScale * m_zoom; }
    void zoomAt(QPointF onScreen, double factor);
    void keepInside();
    void setMark();
    void moveCross(QPointF onPhoto);
    bool moveCrossByKey(int key, double step);

    const Theme& m_theme;
    QImage m_photo;
    PhotoMarks m_marks;
    QPointF m_cross;       ///< pixels of the picture
    double m_fitScale = 1; ///< pixels of the screen a pixel of the picture, when all is shown
    double m_zoom = 1;     ///< 1: all is shown
    QPointF m_corner;      ///< of the picture, on the screen
    std::optional<PhotoMark> m_dragged;
    std::optional<QPointF> m_panFrom;
};

} // namespace ringhold
