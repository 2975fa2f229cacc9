#include "ui/spread/curve_marks.h"

#include "core/watch/setting_answer.h"
#include "ui/common/word_style.h"
#include "ui/plot/look_mark.h"
#include "ui/plot/setting_mark.h"
#include "ui/plot/time_axis.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration oneMark = std::chrono::minutes(2); ///< settings so close together share one

QString settingWords(const Setting& setting) {
    return QString::fromStdString(setting.what + " " + setting.value);
}

void drawLooks(QCustomPlot& plot, const FiringSession& session, const Preferences& preferences,
               const Theme& theme) {
    const auto& curve = session.firing().controlCurve();
    for (const auto& look : session.record().looks)
        if (!look.struck && look.hour > 0)
            new LookMark(&plot, onAxis(look.at), preferences.shown(temperatureAt(curve, look.at)), look.hour,
                         theme);
}

void drawSettings(QCustomPlot& plot, const FiringSession& session, const Preferences& preferences,
                  const Theme& theme, MarkWords words) {
    const auto& curve = session.firing().controlCurve();
    const auto answers = settingAnswers(session.record().settings, curve);
    for (std::size_t i = 0; i < answers.size();) {
        const auto& first = answers[i];
        QStringList done;
        for (; i < answers.size() && answers[i].setting.at - first.setting.at <= oneMark; ++i)
            done << settingWords(answers[i].setting);
        const QPointF place(onAxis(first.setting.at),
                            preferences.shown(temperatureAt(curve, first.setting.at)));
        QString beside;
        if (words == MarkWords::beside)
            beside = done.join(QStringLiteral(", ")) + QLatin1Char('\n') +
                     QString::fromStdString(shortAnswerWords(first, styleOf(preferences)));
        new SettingMark(&plot, place, beside.trimmed(), theme);
    }
}

} // namespace

void drawMarks(QCustomPlot& plot, const FiringSession& session, const Preferences& preferences,
               const Theme& theme, MarkWords words) {
    for (int i = plot.itemCount() - 1; i >= 0; --i)
        if (dynamic_cast<LookMark*>(plot.item(i)) || dynamic_cast<SettingMark*>(plot.item(i)))
            plot.removeItem(i);
    if (session.firing().controlCurve().empty())
        return;
    drawLooks(plot, session, preferences, theme);
    drawSettings(plot, session, preferences, theme, words);
}

QString settingNear(const FiringSession& session, const Preferences& preferences, Instant at,
                    Duration reach) {
    const auto answers = settingAnswers(session.record().settings, session.firing().controlCurve());
    const auto away = [at](const SettingAnswer& a) { return std::chrono::abs(a.setting.at - at); };
    const auto nearest = std::ranges::min_element(answers, {}, away);
    if (nearest == answers.end() || away(*nearest) > reach)
        return {};
    const QString answer = QString::fromStdString(answerWords(*nearest, styleOf(preferences)));
    return settingWords(nearest->setting) + (answer.isEmpty() ? QString() : QStringLiteral(": ") + answer);
}

} // namespace ringhold
