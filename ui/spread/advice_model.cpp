#include "ui/spread/advice_model.h"

#include "core/firing/written_line.h"
#include "core/report/model_words.h"
#include "ui/common/word_style.h"
#include "ui/plan/typed_figures.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/advice_words.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration day = std::chrono::hours(24);
constexpr Duration longestMore = std::chrono::hours(6);
constexpr Duration byStep = std::chrono::minutes(5);

} // namespace

AdviceModel::AdviceModel(const FiringSession& session, const Preferences& preferences, QObject* parent)
    : QObject(parent), m_session(session), m_preferences(preferences) {}

/// The set point that the plan soaks at, if it is still ahead; else where the kiln is.
Temperature AdviceModel::hold() const {
    if (m_hold)
        return *m_hold;
    const auto last = m_session.firing().lastReading();
    const auto* follower = m_session.follower();
    if (follower && follower->position()) {
        const auto& steps = follower->plan().steps;
        for (std::size_t i = follower->position()->step; i < steps.size(); ++i)
            if (const auto* wait = std::get_if<ConeWait>(&steps[i]))
                return wait->set;
    }
    return last ? last->temperature : Temperature::fromCelsius(20);
}

/// Somewhat before the forecast: the next five minutes down from it.
std::optional<Instant> AdviceModel::by() const {
    if (m_by)
        return m_by;
    const auto* cone = firingConeForecast(m_session);
    if (!cone || !cone->down.median)
        return std::nullopt;
    const auto since = cone->down.median->time_since_epoch();
    return Instant(since - since % byStep);
}

QString AdviceModel::holdText() const {
    return typedForm(hold(), m_preferences);
}

QString AdviceModel::byText() const {
    return by() ? m_preferences.clockTime(*by()) : QString();
}

QString AdviceModel::moreText() const {
    return typedForm(m_more);
}

bool AdviceModel::setHold(const QString& text) {
    const auto typed = typedTemperature(text, m_preferences);
    if (!text.trimmed().isEmpty() && !typed)
        return false;
    m_hold = typed;
    refresh();
    return true;
}

bool AdviceModel::setBy(const QString& text) {
    const Instant now = m_session.now();
    auto typed = readClockTime(text.trimmed().toStdString(), now, m_preferences.zone());
    if (!text.trimmed().isEmpty() && !typed)
        return false;
    if (typed) // the latest such time before now: the next one is meant
        *typed += day;
    m_by = typed;
    refresh();
    return true;
}

bool AdviceModel::setMore(const QString& text) {
    const auto typed = typedTime(text);
    const bool fits = typed && *typed >= Duration(0) && *typed <= longestMore;
    if (!text.trimmed().isEmpty() && !fits)
        return false;
    m_more = typed.value_or(std::chrono::minutes(15));
    refresh();
    return true;
}

/// The next cone of the pack after it; itself when it is the last.
std::string AdviceModel::guardCone(const std::string& firingCone) const {
    const auto& cones = m_session.record().packs.front().cones;
    const auto found = std::ranges::find(cones, firingCone);
    return found == cones.end() || std::next(found) == cones.end() ? firingCone : *std::next(found);
}

QString AdviceModel::modelFit() const {
    if (m_session.record().packs.empty())
        return {};
    const auto& pack = m_session.record().packs.front();
    return QString::fromStdString(modelFitWords(pack.cones, pack.type, styleOf(m_preferences)));
}

void AdviceModel::refresh() {
    for (QString* answer : {&m_holdAnswer, &m_byAnswer, &m_moreAnswer, &m_dropAnswer})
        answer->clear();
    if (m_session.forecaster() && m_session.forecast()) {
        const FiringAdvice advice(*m_session.forecaster(), m_session.follower());
        if (const auto* cone = firingConeForecast(m_session); cone && !cone->isDown) {
            m_holdAnswer =
                holdingWords(cone->cone, advice.downHolding(hold(), cone->cone), advice.now(), m_preferences);
            m_byAnswer =
                by() ? climbingWords(advice.climbToBeDownBy(*by(), cone->cone), m_preferences) : QString();
            const auto guard = guardCone(cone->cone);
            m_moreAnswer = stayingWords(guard, advice.hourAfterMore(m_more, guard, cone->cone));
        } else if (cone) {
            const auto guard = guardCone(cone->cone);
            m_moreAnswer = stayingWords(guard, advice.hourAfterMore(m_more, guard, cone->cone));
        }
        m_dropAnswer = droppingWords(advice.afterDropNow());
        if (const auto* cone = firingConeForecast(m_session); cone && !cone->isDown) {
            const auto when =
                earliestDropWords(cone->cone, advice.earliestDrop(cone->cone), advice.now(), m_preferences);
            if (!when.isEmpty())
                m_dropAnswer = when + QLatin1Char(' ') + m_dropAnswer;
        }
    }
    Q_EMIT changed();
}

} // namespace ringhold
