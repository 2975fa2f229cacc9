#include "ui/common/tone.h"

#include <QStyle>
#include <QVariant>
#include <QWidget>

namespace ringhold {

namespace {

const char* nameOf(Tone tone) {
    switch (tone) {
    case Tone::soft:
        return "soft";
    case Tone::forecast:
        return "forecast";
    case Tone::warning:
        return "warning";
    default:
        return "ink";
    }
}

} // namespace

void setTone(QWidget* label, Tone tone) {
    const QString name = QString::fromLatin1(nameOf(tone));
    if (label->property("tone").toString() == name)
        return;
    label->setProperty("tone", name);
    label->style()->unpolish(label);
    label->style()->polish(label);
}

} // namespace ringhold
