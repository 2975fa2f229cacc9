#include "ui/report/page_paper.h"

#include <QLocale>

namespace ringhold {

namespace {

constexpr double left = 54, right = 42, top = 40, bottom = 52;

}

std::optional<Paper> paperNamed(const QString& name) {
    if (name.compare(u"a4", Qt::CaseInsensitive) == 0)
        return Paper::a4;
    if (name.compare(u"letter", Qt::CaseInsensitive) == 0)
        return Paper::letter;
    return std::nullopt;
}

Paper usualPaper() {
    return QLocale::system().measurementSystem() == QLocale::ImperialUSSystem ? Paper::letter : Paper::a4;
}

Paper paperOf(const QPageSize& size) {
    return size.id() == QPageSize::Letter ? Paper::letter : Paper::a4;
}

QPageSize pageSize(Paper paper) {
    return QPageSize(paper == Paper::letter ? QPageSize::Letter : QPageSize::A4);
}

QSizeF sheetOf(Paper paper) {
    return pageSize(paper).size(QPageSize::Point);
}

QRectF bodyOf(Paper paper) {
    return QRectF(QPointF(0, 0), sheetOf(paper)).adjusted(left, top, -right, -bottom);
}

} // namespace ringhold
