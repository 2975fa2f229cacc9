#include "ui/window/notice_bar.h"

#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace ringhold {

NoticeBar::NoticeBar(const Theme& theme, QWidget* parent)
    : QFrame(parent), m_theme(theme), m_words(new QLabel) {
    setAutoFillBackground(true);
    setAccessibleName(tr("Notice"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(28, 6, 12, 6);
    m_words->setWordWrap(true);
    row->addWidget(m_words, 1);
    auto* away = new QPushButton(tr("Put away"));
    connect(away, &QPushButton::clicked, this, &QWidget::hide);
    row->addWidget(away);
    connect(&theme, &Theme::changed, this, &NoticeBar::dress);
    dress();
    hide();
}

void NoticeBar::tell(const QString& what) {
    m_words->setText(what);
    setVisible(!what.isEmpty());
}

QString NoticeBar::text() const {
    return m_words->text();
}

void NoticeBar::dress() {
    QPalette palette = this->palette();
    palette.setColor(QPalette::Window, m_theme.palette().warningGround);
    palette.setColor(QPalette::WindowText, m_theme.palette().warning);
    setPalette(palette);
    m_words->setPalette(palette);
    m_words->setFont(m_theme.text(TextSize::body, QFont::DemiBold));
}

} // namespace ringhold
