#include "ui/window/ribbon.h"

#include "ui/theme/theme.h"

#include <QPainter>

namespace ringhold {

namespace {

constexpr int thickness = 38;
constexpr double corner = 6;

} // namespace

Ribbon::Ribbon(const QString& words, const QKeySequence& key, const Theme& theme, QWidget* parent)
    : QAbstractButton(parent), m_theme(theme) {
    setText(words);
    setAccessibleName(words);
    setCheckable(true);
    setShortcut(key);
    setToolTip(words + QStringLiteral(" (") + key.toString(QKeySequence::NativeText) + QLatin1Char(')'));
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);
    connect(&theme, &Theme::changed, this, qOverload<>(&Ribbon::update));
}

QSize Ribbon::sizeHint() const {
    const QFontMetrics metrics(m_theme.heading(TextSize::body, text()));
    return {thickness, std::max(92, metrics.horizontalAdvance(text()) + 36)};
}

void Ribbon::paintEvent(QPaintEvent*) {
    const auto& palette = m_theme.palette();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    QPainterPath shape;
    shape.addRoundedRect(QRectF(-corner, 0.5, width() + corner - 0.5, height() - 1), corner, corner);
    painter.setPen(QPen(palette.edge, 1));
    painter.setBrush(isChecked() ? palette.band : palette.page);
    painter.drawPath(shape);
    if (hasFocus()) {
        painter.setPen(QPen(palette.kiln, 2));
        painter.drawLine(QPointF(width() - 3, 10), QPointF(width() - 3, height() - 10));
    }
    QFont font = m_theme.heading(TextSize::body, text());
    font.setBold(isChecked());
    painter.setFont(font);
    painter.setPen(isChecked() ? palette.ink : palette.soft);
    painter.translate(width(), 0);
    painter.rotate(90);
    painter.drawText(QRect(0, 0, height(), width()), Qt::AlignCenter, text());
}

} // namespace ringhold
