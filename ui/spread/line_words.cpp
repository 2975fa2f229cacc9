#include "ui/spread/line_words.h"

#include "core/firing/written_meter.h"
#include "core/watch/told_hold.h"
#include "ui/common/word_style.h"
#include "ui/cones/cone_words.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>
#include <QStringList>

namespace ringhold {

namespace {

struct LineTalk {
    Q_DECLARE_TR_FUNCTIONS(LineTalk)
};

std::optional<ToldHold> holdIn(const WrittenSetting& s, const Preferences& preferences) {
    return toldHold(Setting{{}, {}, {}, s.what, s.value, false}, styleOf(preferences).scale);
}

QString holdWords(const ToldHold& told, const Preferences& preferences) {
    if (told.over())
        return LineTalk::tr("the hold is over");
    QString words = LineTalk::tr("hold");
    if (told.target)
        words += QLatin1Char(' ') + preferences.temperature(*told.target);
    if (told.halfWidth)
        words += QStringLiteral(" ± ") + preferences.difference(*told.halfWidth, 0, false);
    return words;
}

struct Teller {
    const Preferences& p;
    Fuel fuel;

    QString operator()(const WrittenNote&) const { return LineTalk::tr("note"); }
    QString operator()(const WrittenReading& r) const {
        return LineTalk::tr("reading ") + p.temperature(r.value);
    }
    QString operator()(const WrittenLooks& l) const {
        QStringList cones;
        for (const auto& look : l.looks)
            cones << coneInWords(QString::fromStdString(look.cone), look.hour);
        return LineTalk::tr("look: ") + cones.join(QStringLiteral(", "));
    }
    QString operator()(const WrittenSetting& s) const {
        if (isMeter(s))
            return meterWords(s);
        if (const auto told = holdIn(s, p))
            return holdWords(*told, p);
        const QString what = QString::fromStdString(s.what);
        if (what.compare(QLatin1String(holdSetting), Qt::CaseInsensitive) == 0)
            return LineTalk::tr("no hold: it is told like “hold: 1076 ± 4” or “hold: over”");
        return LineTalk::tr("setting: ") + what;
    }
    QString meterWords(const WrittenSetting& s) const {
        const auto meter =
            readMeter(s, fuel == Fuel::gas ? MeterUnit::cubicMetres : MeterUnit::kilowattHours);
        if (!meter)
            return QString::fromStdString(meter.error().what);
        return LineTalk::tr("meter %1 %2")
            .arg(meter->stand, 0, 'f', 1)
            .arg(meter->unit == MeterUnit::cubicMetres ? QStringLiteral("m³") : QStringLiteral("kWh"));
    }
};

} // namespace

QString describedLine(const WrittenLine& line, const Preferences& preferences, Fuel fuel) {
    return std::visit(Teller{preferences, fuel}, line.what) + LineTalk::tr(", at ") +
           preferences.clockTime(line.at) + LineTalk::tr(" · Enter");
}

WrittenLine withUnit(WrittenLine line, const Preferences& preferences) {
    auto* setting = std::get_if<WrittenSetting>(&line.what);
    const auto told = setting ? holdIn(*setting, preferences) : std::nullopt;
    const bool open = told && !told->over() && setting->value.find_first_of("CFcf") == std::string::npos;
    if (open)
        setting->value += " " + unitWords(styleOf(preferences));
    return line;
}

} // namespace ringhold
