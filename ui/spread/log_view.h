// The left page as a view: time, a mark in the margin that tells the kinds apart, words; the newest line
// stays in sight.
#pragma once

#include <QListView>
#include <QStyledItemDelegate>

namespace ringhold {

class Theme;

class LogDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    explicit LogDelegate(const Theme& theme, QObject* parent = nullptr)
        : QStyledItemDelegate(parent), m_theme(theme) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    QRect wordsRect(const QRect& line) const;
    QFont remarkFont(const QModelIndex& index) const;
    void paintMark(QPainter& painter, const QRectF& mark, int kind) const;

    const Theme& m_theme;
};

/// The theme outlives it. Delete strikes the line that is picked, or takes that back; so does its menu.
class LogView : public QListView {
    Q_OBJECT

  public:
    explicit LogView(const Theme& theme, QWidget* parent = nullptr);
    void setModel(QAbstractItemModel* model) override;

  Q_SIGNALS:
    void strikeWanted(int row);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
};

} // namespace ringhold
