#include "ui/common/firing_words.h"

#include "core/book/reader.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("FiringWords", words);
}

QString titleOr(const std::string& title, FiringId id) {
    return title.empty() ? tr("Firing %1").arg(static_cast<qint64>(id)) : QString::fromStdString(title);
}

} // namespace

QString firingTitle(const FiringSummary& firing) {
    return titleOr(firing.title, firing.id);
}

QString firingTitle(const Firing& firing) {
    return titleOr(firing.title, firing.id);
}

QString firingWords(const FiringSummary& firing, const Preferences& preferences) {
    const QString words = QStringList{firingTitle(firing), QString::fromStdString(firing.kilnName),
                                      preferences.date(firing.began)}
                              .join(QStringLiteral(" · "));
    return firing.ended ? words : words + tr(" · fired now");
}

} // namespace ringhold
