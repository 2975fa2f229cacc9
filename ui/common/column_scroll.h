// A column that scrolls when it is too tall, and is never narrower than what is in it.
#pragma once

#include <QScrollArea>

namespace ringhold {

class ColumnScroll : public QScrollArea {
    Q_OBJECT

  public:
    explicit ColumnScroll(QWidget* column, QWidget* parent = nullptr);
    QSize minimumSizeHint() const override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

} // namespace ringhold
