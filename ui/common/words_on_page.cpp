#include "ui/common/words_on_page.h"

#include <QFrame>
#include <QVBoxLayout>

namespace ringhold {

Heading::Heading(const Theme& theme, TextSize size, const QString& words, QWidget* parent)
    : QLabel(words, parent), m_theme(theme), m_size(size) {
    connect(&theme, &Theme::changed, this, &Heading::dress);
    dress();
}

void Heading::say(const QString& words) {
    setText(words);
    dress();
}

void Heading::dress() {
    setFont(m_theme.heading(m_size, text()));
}

QLabel* softLabel(const QString& words) {
    auto* label = new QLabel(words);
    label->setProperty("tone", QStringLiteral("soft"));
    label->setWordWrap(true);
    return label;
}

Remark::Remark(Kind kind, QWidget* parent) : QLabel(parent) {
    setWordWrap(true);
    if (kind == Kind::warning)
        setProperty("ground", QStringLiteral("warning"));
    else
        setProperty("tone", QStringLiteral("soft"));
    hide();
}

void Remark::say(const QString& words) {
    setText(words);
    setVisible(!words.isEmpty());
}

QFrame* sheet(QVBoxLayout*& column) {
    auto* frame = new QFrame;
    frame->setProperty("card", true);
    column = new QVBoxLayout(frame);
    column->setContentsMargins(22, 16, 22, 16);
    column->setSpacing(8);
    return frame;
}

} // namespace ringhold
