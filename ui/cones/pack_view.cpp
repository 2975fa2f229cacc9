#include "ui/cones/pack_view.h"

#include "ui/cones/cone_words.h"
#include "ui/theme/theme.h"

#include <QPainter>

namespace ringhold {

PackView::PackView(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setAccessibleName(tr("Cone pack"));
    connect(&theme, &Theme::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void PackView::setPack(const DrawnPack& pack) {
    m_pack = pack;
    setAccessibleDescription(packInWords(pack));
    updateGeometry();
    update();
}

QSize PackView::sizeHint() const {
    const int coneHeight = 4 * fontMetrics().height();
    return {static_cast<int>(coneHeight * PackDrawing::aspect(m_pack.cones.size())),
            coneHeight + fontMetrics().height()};
}

void PackView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const auto names = m_theme.text(TextSize::body);
    const PackDrawing drawing(m_pack, rect(), QFontMetricsF(names).height() * 1.15);
    drawing.paint(painter, PackInks::onPaper(m_theme.palette()), names);
}

QString packInWords(const DrawnPack& pack) {
    QStringList seen;
    QStringList thought;
    for (const auto& cone : pack.cones) {
        seen += coneInWords(cone.name, cone.hour);
        if (const auto& ghost = cone.ghost)
            thought += PackView::tr("%1 (%2 to %3)")
                           .arg(coneInWords(cone.name, ghost->hour), hourOnButton(ghost->low),
                                hourOnButton(ghost->high));
    }
    const QString words = seen.join(QStringLiteral(", "));
    return thought.isEmpty()
               ? words
               : PackView::tr("%1; thought to be now: %2").arg(words, thought.join(QStringLiteral(", ")));
}

} // namespace ringhold
