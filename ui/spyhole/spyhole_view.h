// The spyhole as drawn: a glowing hole with the pack in it, whose tips can be pulled to their hour.
#pragma once

#include "ui/cones/pack_drawing.h"

#include <QWidget>

namespace ringhold {

class Theme;

class SpyholeView : public QWidget {
    Q_OBJECT

  public:
    /// The theme outlives it.
    explicit SpyholeView(const Theme& theme, QWidget* parent = nullptr);

    void setPack(const DrawnPack& pack);
    /// Where everything lies now; for whoever points at it.
    PackDrawing drawing() const;

    QSize sizeHint() const override { return {420, 420}; }
    QSize minimumSizeHint() const override { return {240, 240}; }

  Q_SIGNALS:
    /// A cone was clicked.
    void picked(std::size_t cone);
    /// A tip was pulled to that hour, in halves.
    void pulled(std::size_t cone, double hour);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

  private:
    QRectF hole() const;
    QFont nameFont() const;

    const Theme& m_theme;
    DrawnPack m_pack;
    std::optional<std::size_t> m_held; ///< the cone under the pressed button
    QPointF m_pressedAt;
    bool m_pulling = false;
};

} // namespace ringhold
