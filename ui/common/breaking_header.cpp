#include "ui/common/breaking_header.h"

#include <QStyleOptionHeader>

namespace ringhold {

namespace {

constexpr int around = 18; ///< pixels of a section that are not its words': padding, the arrow's edge

}

BreakingHeader::BreakingHeader(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setMinimumSectionSize(20);
    setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
}

QString BreakingHeader::broken(const QString& words, int section) const {
    const int room = sectionSize(section) - around;
    if (fontMetrics().horizontalAdvance(words) <= room)
        return words;
    QString lines;
    QString line;
    for (const auto& word : words.split(u' ')) {
        const QString longer = line.isEmpty() ? word : line + u' ' + word;
        if (line.isEmpty() || fontMetrics().horizontalAdvance(longer) <= room) {
            line = longer;
            continue;
        }
        lines += line + u'\n';
        line = word;
    }
    return lines + line;
}

void BreakingHeader::initStyleOptionForIndex(QStyleOptionHeader* option, int section) const {
    QHeaderView::initStyleOptionForIndex(option, section);
    option->text = broken(option->text, section);
}

QSize BreakingHeader::sectionSizeFromContents(int section) const {
    const QSize size = QHeaderView::sectionSizeFromContents(section);
    const QString words = model()->headerData(section, Qt::Horizontal).toString();
    const auto more = broken(words, section).count(u'\n') - words.count(u'\n');
    return size + QSize(0, static_cast<int>(more) * fontMetrics().lineSpacing());
}

} // namespace ringhold
