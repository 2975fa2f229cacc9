#include "ui/common/caution_line.h"

#include "ui/theme/theme.h"

namespace ringhold {

CautionLine::CautionLine(const Theme& theme, const QString& lead, const QString& words, QWidget* parent)
    : QLabel(parent), m_theme(theme), m_lead(lead), m_words(words) {
    setTextFormat(Qt::RichText);
    setWordWrap(true);
    setAccessibleName(lead + QLatin1Char(' ') + words);
    connect(&theme, &Theme::changed, this, &CautionLine::dress);
    dress();
}

void CautionLine::dress() {
    const auto& palette = m_theme.palette();
    setText(QStringLiteral("<b style='color:%1'>%2</b> <span style='color:%3'>%4</span>")
                .arg(palette.warning.name(), m_lead.toHtmlEscaped(), palette.soft.name(),
                     m_words.toHtmlEscaped()));
}

} // namespace ringhold
