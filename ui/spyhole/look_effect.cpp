#include "ui/spyhole/look_effect.h"

#include "ui/cones/cone_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double probablyWrong = 0.5;

struct Effect {
    Q_DECLARE_TR_FUNCTIONS(Effect)
};

QString clock(Instant at, const WordStyle& style) {
    return QString::fromStdString(clockWords(at, style));
}

/// "18:17, 18:11 to 18:25"; nothing when it cannot be told as a time.
QString timesOf(const TimeInterval& down, const WordStyle& style) {
    if (!down.median || !down.p05)
        return {};
    const QString from = clock(*down.median, style) + QStringLiteral(", ") + clock(*down.p05, style);
    return down.p95 ? Effect::tr("%1 to %2").arg(from, clock(*down.p95, style))
                    : Effect::tr("%1 or later").arg(from);
}

/// Without the cone's name.
QString endWords(const ConeForecast& cone, const WordStyle& style) {
    if (cone.isDown)
        return Effect::tr("is down");
    if (const QString times = timesOf(cone.down, style); !times.isEmpty())
        return Effect::tr("down %1").arg(times);
    return cone.down.p05 ? Effect::tr("not down before %1").arg(clock(*cone.down.p05, style))
                         : Effect::tr("not down within a day");
}

/// The last look before an instant at which the cone was bent further.
const Look* bentFurther(const Look& added, const std::vector<Look>& earlier) {
    const auto found = std::ranges::find_if(earlier, [&](const Look& look) {
        return look.pack == added.pack && look.cone == added.cone && look.at < added.at &&
               look.hour > added.hour;
    });
    return found == earlier.end() ? nullptr : &*found;
}

/// The places in a pack's wrongLook of the looks added: a pack's looks in order of time, the added ones after
/// others of the same time.
std::vector<double> wrongnessOf(const std::vector<Look>& added, const std::vector<Look>& earlier,
                                const std::vector<Pack>& packs, const Forecast& with) {
    std::vector<double> wrongness(added.size(), 0.0);
    for (std::size_t p = 0; p < packs.size() && p < with.packs.size(); ++p) {
        std::vector<std::pair<Instant, std::optional<std::size_t>>> order;
        for (const auto& look : earlier)
            if (look.pack == packs[p].id)
                order.emplace_back(look.at, std::nullopt);
        for (std::size_t i = 0; i < added.size(); ++i)
            if (added[i].pack == packs[p].id)
                order.emplace_back(added[i].at, i);
        std::ranges::stable_sort(order, {}, [](const auto& entry) { return entry.first; });
        const auto& told = with.packs[p].wrongLook;
        for (std::size_t i = 0; i < std::min(order.size(), told.size()); ++i)
            if (order[i].second)
                wrongness[*order[i].second] = told[i];
    }
    return wrongness;
}

/// Where the model has the cone now, without the look.
const ConeForecast* thoughtOf(const Look& look, const std::vector<Pack>& packs, const Forecast& without) {
    for (std::size_t p = 0; p < packs.size() && p < without.packs.size(); ++p)
        for (const auto& cone : without.packs[p].cones)
            if (packs[p].id == look.pack && cone.cone == look.cone)
                return &cone;
    return nullptr;
}

/// "at 1 o'clock (just leaning to 2)"; without the interval when it is all the same.
QString thoughtWords(const Interval<double>& hour) {
    const QString median = QString::fromStdString(hourWords(hour.median));
    const QString low = hourOnButton(hour.p05);
    const QString high = hourOnButton(hour.p95);
    return low == high ? median : Effect::tr("%1 (%2 to %3)").arg(median, low, high);
}

QString sawWords(const Look& look) {
    return coneInWords(QString::fromStdString(look.cone), look.hour);
}

} // namespace

std::size_t toldCone(const Pack& pack, const PackForecast& forecast,
                     const std::optional<std::string>& firingCone) {
    const auto count = pack.cones.size();
    auto told = static_cast<std::size_t>(std::ranges::find(pack.cones, firingCone.value_or(std::string())) -
                                         pack.cones.begin());
    if (told == count)
        told = count / 2;
    for (auto next = told; next < std::min(count, forecast.cones.size()); ++next)
        if (!forecast.cones[next].isDown)
            return next;
    return told;
}

QString downWords(const ConeForecast& cone, const WordStyle& style) {
    return Effect::tr("cone %1 %2").arg(QString::fromStdString(cone.cone), endWords(cone, style));
}

QString effectWords(const ConeForecast& without, const ConeForecast& with, std::size_t looks,
                    const WordStyle& style) {
    const QString lead = looks == 1 ? Effect::tr("With this look: %1.") : Effect::tr("With these looks: %1.");
    const QString times = without.isDown ? QString() : timesOf(without.down, style);
    const QString before = times.isEmpty() ? Effect::tr("Without: %1.").arg(downWords(without, style))
                                           : Effect::tr("It was %1.").arg(times);
    return lead.arg(downWords(with, style)) + QLatin1Char('\n') + before;
}

QStringList doubtsAbout(const std::vector<Look>& added, const std::vector<Look>& earlier,
                        const std::vector<Pack>& packs, const LookPreview& preview, const WordStyle& style) {
    QStringList doubts;
    const auto wrongness = wrongnessOf(added, earlier, packs, preview.with);
    for (std::size_t i = 0; i < added.size(); ++i) {
        const auto* thought = thoughtOf(added[i], packs, preview.without);
        if (const auto* before = bentFurther(added[i], earlier))
            doubts += Effect::tr("%1, but at %2 it was %3: a cone does not straighten. Was it this cone? "
                                 "It can be written all the same.")
                          .arg(sawWords(added[i]), clock(before->at, style),
                               QString::fromStdString(hourWords(before->hour)));
        else if (wrongness[i] >= probablyWrong && thought)
            doubts += Effect::tr("%1 does not fit: by the readings and the other looks it should be %2 now. "
                                 "Was it this cone? It can be written all the same.")
                          .arg(sawWords(added[i]), thoughtWords(thought->hourNow));
    }
    return doubts;
}

} // namespace ringhold
