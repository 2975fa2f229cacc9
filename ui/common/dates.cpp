#include "ui/common/dates.h"

#include "ui/session/preferences.h"

#include <QDate>
#include <QLocale>

namespace ringhold {

QString typedDate(Instant at, const Preferences& preferences) {
    return QString::fromStdString(formatInZone(at, preferences.zone(), "%Y-%m-%d"));
}

QString shortDate(Instant at, const Preferences& preferences) {
    const auto day = QDate::fromString(typedDate(at, preferences), Qt::ISODate);
    return QLocale(QLocale::English).toString(day, QStringLiteral("d MMM yyyy"));
}

Result<Instant> dayTyped(const QString& text, const Preferences& preferences) {
    const auto day = QDate::fromString(text.trimmed(), Qt::ISODate);
    if (!day.isValid())
        return Error{ErrorKind::badInput, "a day is written as 2026-03-01"};
    return parseIso8601(day.toString(Qt::ISODate).toStdString() + "T00:00", preferences.zone());
}

} // namespace ringhold
