#include "ui/spread/heat_card.h"

#include "core/watch/hold_statistics.h"
#include "ui/common/tone.h"
#include "ui/cones/cone_words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

QString betweenWords(const TimeInterval& when, const Preferences& preferences) {
    if (!when.median)
        return when.p05 ? QStringLiteral("not before ") + preferences.clockTime(*when.p05)
                        : QStringLiteral("not at this rate");
    return QStringLiteral("%1 (%2 to %3)")
        .arg(preferences.clockTime(*when.median),
             when.p05 ? preferences.clockTime(*when.p05) : QStringLiteral("–"),
             when.p95 ? preferences.clockTime(*when.p95) : QStringLiteral("much later"));
}

QString offsetWords(const PackForecast& pack, const FiringSession& session, const Preferences& preferences) {
    const double mean_C = pack.offset.median.celsius();
    const auto figure = [&](TemperatureDifference d) {
        return QString::number(std::round(preferences.shown(d)));
    };
    const auto looks =
        std::ranges::count_if(session.record().looks, [](const Look& look) { return !look.struck; });
    const QString span =
        mean_C >= 0 ? QStringLiteral("%1 to %2").arg(figure(pack.offset.p05), figure(pack.offset.p95))
                    : QStringLiteral("%1 to %2").arg(figure(-pack.offset.p95), figure(-pack.offset.p05));
    return QStringLiteral("Probe reads %1 %2 (%3), from %4.")
        .arg(preferences.difference(mean_C < 0 ? -pack.offset.median : pack.offset.median, 0, false),
             mean_C < 0 ? QStringLiteral("low") : QStringLiteral("high"),
             QString(span).replace(QLatin1Char('-'), QChar(0x2212)),
             looks == 0   ? QStringLiteral("no look yet")
             : looks == 1 ? QStringLiteral("one look")
                          : QStringLiteral("%1 looks").arg(looks));
}

CardWords heatWords(const FiringSession& session, const Preferences& preferences) {
    CardWords words{QStringLiteral("Heat work"), {}, {}};
    if (!session.forecast() || session.forecast()->packs.empty()) {
        words.main = QStringLiteral("No forecast yet");
        words.lines << (session.record().packs.empty()
                            ? QStringLiteral("This firing has no cone pack.")
                            : QStringLiteral("It begins with the second reading."));
        return words;
    }
    const auto& pack = session.forecast()->packs.front();
    QStringList standing;
    for (const auto& cone : pack.cones)
        standing << coneInWords(QString::fromStdString(cone.cone), std::round(cone.hourNow.median * 2) / 2);
    words.main = standing.join(QStringLiteral(", "));
    for (const auto& cone : pack.cones)
        if (!cone.isDown) {
            words.lines << QStringLiteral("Cone %1 down ").arg(QString::fromStdString(cone.cone)) +
                               betweenWords(cone.down, preferences) + QLatin1Char('.');
            if (words.lines.size() == 2)
                break;
        }
    words.lines << offsetWords(pack, session, preferences);
    for (std::size_t i = 0; i < pack.wrongLook.size(); ++i)
        if (pack.wrongLook[i] > 0.5)
            words.lines << QStringLiteral("One look does not fit the rest: was it that cone, that hour?");
    return words;
}

/// Since the present step began.
CardWords holdWords(const FiringSession& session, const Preferences& preferences, const Hold& hold,
                    Instant since) {
    CardWords words{QStringLiteral("Hold ") + preferences.temperature(hold.at), {}, {}};
    const auto& curve = session.firing().controlCurve();
    if (curve.empty() || curve.back().at <= since)
        return words;
    const auto held = judgeHold(curve, {hold.at, hold.band}, {since, curve.back().at});
    words.main =
        QStringLiteral("mean %1, sd %2")
            .arg(preferences.temperature(held.mean, 1), QString::number(preferences.shown(held.sd), 'f', 1));
    words.lines << QStringLiteral("%1 of %2. In the band %3 % of the time.")
                       .arg(preferences.span(held.end - held.start), preferences.span(hold.length),
                            QString::number(held.insideShare * 100, 'f', 1));
    words.lines << QStringLiteral("From %1 to %2; longest out %3.")
                       .arg(preferences.temperature(held.min), preferences.temperature(held.max),
                            preferences.span(held.longestExcursion));
    return words;
}

} // namespace

CardWords cardWords(const FiringSession& session, const Preferences& preferences) {
    if (const auto* follower = session.follower(); follower && follower->position()) {
        const auto position = *follower->position();
        if (const auto* hold = std::get_if<Hold>(&follower->plan().steps[position.step]))
            return holdWords(session, preferences, *hold, position.since);
    }
    return heatWords(session, preferences);
}

HeatCard::HeatCard(const FiringSession& session, const Preferences& preferences, const Theme& theme,
                   QWidget* parent)
    : QFrame(parent), m_session(session), m_preferences(preferences), m_theme(theme), m_title(new QLabel),
      m_main(new QLabel), m_lines(new QLabel) {
    setProperty("card", true);
    setAccessibleName(tr("Heat work and hold"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 10, 14, 10);
    column->setSpacing(4);
    m_main->setWordWrap(true);
    m_lines->setWordWrap(true);
    column->addWidget(m_title);
    column->addWidget(m_main);
    column->addWidget(m_lines);
    column->addStretch(1);
    connect(&session, &FiringSession::forecastChanged, this, &HeatCard::refresh);
    connect(&preferences, &Preferences::changed, this, &HeatCard::refresh);
    connect(&theme, &Theme::changed, this, &HeatCard::dress);
    dress();
}

void HeatCard::dress() {
    m_main->setFont(m_theme.text(TextSize::large, QFont::Bold));
    setTone(m_lines, Tone::soft);
    m_lines->setFont(m_theme.text(TextSize::body));
    refresh();
}

void HeatCard::refresh() {
    const auto words = cardWords(m_session, m_preferences);
    m_title->setText(words.title);
    m_title->setFont(m_theme.heading(TextSize::large, words.title));
    m_main->setText(words.main);
    m_lines->setText(words.lines.join(QLatin1Char('\n')));
}

} // namespace ringhold
