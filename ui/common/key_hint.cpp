#include "ui/common/key_hint.h"

#include <QFontMetrics>
#include <QPainter>

namespace ringhold {

namespace {

constexpr int padding = 5; ///< in the chip, and between it and the word

}

KeyHint::KeyHint(const Theme& theme, const QKeySequence& key, const QString& word, QWidget* parent)
    : QAbstractButton(parent), m_theme(theme), m_key(key) {
    setText(word);
    setAccessibleName(word);
    setAccessibleDescription(keyText());
    setFocusPolicy(Qt::NoFocus);
    connect(&theme, &Theme::changed, this, [this] {
        updateGeometry();
        update();
    });
}

QString KeyHint::keyText() const {
    return m_key.toString(QKeySequence::NativeText).replace(u'+', u' ');
}

int KeyHint::chipWidth() const {
    return QFontMetrics(m_theme.text(TextSize::small)).horizontalAdvance(keyText()) + 2 * padding;
}

QSize KeyHint::sizeHint() const {
    const QFontMetrics word(m_theme.text(TextSize::body));
    return {chipWidth() + padding + word.horizontalAdvance(text()) + 1, word.height() + 6};
}

void KeyHint::paintEvent(QPaintEvent*) {
    const auto& palette = m_theme.palette();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double chipHeight = QFontMetricsF(m_theme.text(TextSize::small)).height() + 2;
    const QRectF chip(0.5, (height() - chipHeight) / 2, chipWidth(), chipHeight);
    painter.setPen(underMouse() ? palette.soft : palette.edge);
    painter.setBrush(isDown() ? palette.grid : palette.page);
    painter.drawRoundedRect(chip, 3, 3);
    painter.setFont(m_theme.text(TextSize::small));
    painter.setPen(palette.soft);
    painter.drawText(chip, Qt::AlignCenter, keyText());
    painter.setFont(m_theme.text(TextSize::body));
    painter.setPen(isEnabled() ? palette.ink : palette.faint);
    painter.drawText(rect().adjusted(chipWidth() + padding, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     text());
}

void KeyHint::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void KeyHint::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

} // namespace ringhold
