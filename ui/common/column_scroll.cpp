#include "ui/common/column_scroll.h"

#include <QEvent>
#include <QScrollBar>

namespace ringhold {

ColumnScroll::ColumnScroll(QWidget* column, QWidget* parent) : QScrollArea(parent) {
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    setWidgetResizable(true);
    setWidget(column);
    column->setAutoFillBackground(false); // the page shows through
    viewport()->setAutoFillBackground(false);
}

QSize ColumnScroll::minimumSizeHint() const {
    return {widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width(),
            QScrollArea::minimumSizeHint().height()};
}

bool ColumnScroll::eventFilter(QObject* watched, QEvent* event) {
    if (watched == widget() && event->type() == QEvent::LayoutRequest)
        updateGeometry();
    return QScrollArea::eventFilter(watched, event);
}

} // namespace ringhold
