// The shelves from above, with what stands on them.
#pragma once

#include "ui/ware/shelf_map_model.h"

#include <QWidget>

namespace ringhold {

class Theme;

/// Pieces are round, cone packs are bars; what has no place of its own yet is drawn dashed. A drag moves,
/// also to another shelf. By keyboard: arrows go from one to the next; Enter takes it up, then arrows move
/// it, Page up and Page down go to another shelf, Enter sets it down and Escape puts it back. Model and theme
/// outlive it.
class ShelfMapView : public QWidget {
    Q_OBJECT

  public:
    ShelfMapView(ShelfMapModel& model, const Theme& theme, QWidget* parent = nullptr);

    int current() const { return m_current; }
    void setCurrent(int row);
    bool carries() const { return m_carried.has_value(); }
    /// Middle of an item on the screen.
    QPointF middleOf(int row) const;
    QRectF shelfRect(int shelf) const;
    QSize minimumSizeHint() const override { return {320, 240}; }

  Q_SIGNALS:
    /// Set down somewhere else than it was.
    void moved(const ringhold::ShelfItem& item, const QString& shelf, ringhold::MapSpot spot);
    void currentChanged(int row);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    struct Place {
        int shelf = 0;
        MapSpot spot;
    };
    Place placeOf(int row) const;
    Place placeAt(QPointF onScreen) const;
    QPointF onScreen(const Place& place) const;
    QRectF ground(int shelf) const;
    void takeUp();
    void setDown();
    void putBack();
    bool carry(int key);
    bool walk(int key);
    void modelReset();
    void tell();
    void drawShelf(QPainter& painter, int shelf) const;
    void drawItem(QPainter& painter, int row) const;

    ShelfMapModel& m_model;
    const Theme& m_theme;
    int m_current = -1;
    std::optional<Place> m_carried; ///< where the current one is held
    std::optional<QPointF> m_pressed;
    std::optional<std::variant<PieceId, PackId>> m_currentId;
};

} // namespace ringhold
