#include "ui/spyhole/spyhole_model.h"

#include "core/firing/written_line.h"
#include "core/report/model_words.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

Error bad(const QString& what) {
    return {ErrorKind::badInput, what.toStdString()};
}

} // namespace

SpyholeModel::SpyholeModel(Outside outside, QObject* parent)
    : QObject(parent), m_outside(std::move(outside)) {}

void SpyholeModel::setFiring(std::vector<Pack> packs, const std::vector<Look>& looks,
                             std::optional<std::string> firingCone) {
    const auto shown = m_current < m_packs.size() ? m_packs[m_current].id : PackId{};
    m_packs = std::move(packs);
    m_firingCone = std::move(firingCone);
    m_looks.clear();
    std::ranges::copy_if(looks, std::back_inserter(m_looks), [](const Look& look) { return !look.struck; });
    const auto still = std::ranges::find(m_packs, shown, &Pack::id);
    m_current = still == m_packs.end() ? 0 : static_cast<std::size_t>(still - m_packs.begin());
    std::erase_if(m_chosen, [this](const auto& entry) {
        const auto* pack = packOf(entry.first.pack);
        return !pack || std::ranges::count(pack->cones, entry.first.cone) == 0;
    });
    understandTyped();
    Q_EMIT packsChanged();
    update();
}

void SpyholeModel::refresh() {
    understandTyped();
    update();
}

void SpyholeModel::setCurrentPack(std::size_t pack) {
    if (pack >= m_packs.size() || pack == m_current)
        return;
    m_current = pack;
    Q_EMIT packsChanged();
    update();
}

QStringList SpyholeModel::fitNotes() const {
    QStringList notes;
    if (m_current >= m_packs.size())
        return notes;
    for (const auto& name : m_packs[m_current].cones) {
        const auto* cone = ConeTable::builtIn().find(name, m_packs[m_current].type);
        notes << (cone ? QString::fromStdString(modelFitWords(*cone, m_outside.style())) : QString());
    }
    return notes;
}

const Pack* SpyholeModel::packOf(PackId id) const {
    const auto found = std::ranges::find(m_packs, id, &Pack::id);
    return found == m_packs.end() ? nullptr : &*found;
}

/// The current one first.
const Pack* SpyholeModel::packWith(const std::string& cone) const {
    const auto has = [&](const Pack& pack) { return std::ranges::count(pack.cones, cone) > 0; };
    if (m_current < m_packs.size() && has(m_packs[m_current]))
        return &m_packs[m_current];
    const auto found = std::ranges::find_if(m_packs, has);
    return found == m_packs.end() ? nullptr : &*found;
}

std::optional<SpyholeModel::ConeKey> SpyholeModel::keyOf(std::size_t cone) const {
    if (m_current >= m_packs.size() || cone >= m_packs[m_current].cones.size())
        return std::nullopt;
    return ConeKey{m_packs[m_current].id, m_packs[m_current].cones[cone]};
}

SpyholeModel::Hours SpyholeModel::allEntered() const {
    Hours hours = m_typedHours;
    hours.insert(m_chosen.begin(), m_chosen.end()); // which leaves what was typed
    return hours;
}

std::optional<double> SpyholeModel::entered(std::size_t cone) const {
    const auto key = keyOf(cone);
    if (!key)
        return std::nullopt;
    const auto hours = allEntered();
    const auto found = hours.find(*key);
    return found == hours.end() ? std::nullopt : std::optional(found->second);
}

void SpyholeModel::enter(std::size_t cone, std::optional<double> hour) {
    const auto key = keyOf(cone);
    if (!key || (hour && !isTellableHour(*hour)))
        return;
    if (m_typedHours.contains(*key)) // a click says more than what was typed before it
        takeTypedAsChosen();
    if (hour)
        m_chosen[*key] = *hour;
    else
        m_chosen.erase(*key);
    update();
}

void SpyholeModel::setTyped(const QString& text) {
    if (text == m_typed)
        return;
    const auto before = std::pair(allEntered(), m_typedAt);
    m_typed = text;
    understandTyped();
    if (std::pair(allEntered(), m_typedAt) == before)
        Q_EMIT changed(); // no need to reckon
    else
        update();
}

void SpyholeModel::understandTyped() {
    m_typedHours.clear();
    m_typedTrouble.clear();
    m_typedAt.reset();
    if (m_typed.trimmed().isEmpty())
        return;
    WritingContext context{m_outside.now(), m_outside.style().zone, false, {}};
    for (const auto& pack : m_packs)
        context.cones.insert(context.cones.end(), pack.cones.begin(), pack.cones.end());
    const auto line = readWrittenLine(m_typed.toStdString(), LineKind::look, context);
    if (!line) {
        m_typedTrouble = QString::fromStdString(line.error().what);
        return;
    }
    if (line->at != context.now)
        m_typedAt = line->at;
    for (const auto& look : std::get<WrittenLooks>(line->what).looks)
        m_typedHours[{packWith(look.cone)->id, look.cone}] = look.hour;
}

void SpyholeModel::takeTypedAsChosen() {
    m_chosen = allEntered();
    if (m_typedAt)
        m_time = MinutesAgo{static_cast<int>(std::lround(inMinutes(m_outside.now() - *m_typedAt)))};
    m_typed.clear();
    understandTyped();
}

void SpyholeModel::setTime(const LookTime& time) {
    m_time = time;
    update();
}

std::optional<Instant> SpyholeModel::at() const {
    if (m_typedAt)
        return m_typedAt;
    const Instant now = m_outside.now();
    if (const auto* ago = std::get_if<MinutesAgo>(&m_time))
        return now - std::chrono::minutes(ago->minutes);
    return readClockTime(std::get<ClockTime>(m_time).text.trimmed().toStdString(), now,
                         m_outside.style().zone);
}

QString SpyholeModel::atWords() const {
    const auto when = at();
    return when ? QString::fromStdString(clockWords(*when, m_outside.style())) : QString();
}

std::optional<double> SpyholeModel::lastSeen(const ConeKey& key) const {
    std::optional<double> hour;
    std::optional<Instant> latest;
    for (const auto& look : m_looks)
        if (look.pack == key.pack && look.cone == key.cone && (!latest || look.at >= *latest)) {
            latest = look.at;
            hour = look.hour;
        }
    return hour;
}

std::optional<GhostCone> SpyholeModel::ghostOf(std::size_t cone) const {
    if (!m_forecast || m_current >= m_forecast->packs.size() ||
        cone >= m_forecast->packs[m_current].cones.size())
        return std::nullopt;
    const auto& hour = m_forecast->packs[m_current].cones[cone].hourNow;
    return GhostCone{hour.median, hour.p05, hour.p95};
}

DrawnPack SpyholeModel::drawing() const {
    DrawnPack drawn;
    if (m_current >= m_packs.size())
        return drawn;
    drawn.leansLeft = m_packs[m_current].leansLeft;
    for (std::size_t i = 0; i < m_packs[m_current].cones.size(); ++i) {
        const auto hour = entered(i);
        drawn.cones.push_back({QString::fromStdString(m_packs[m_current].cones[i]),
                               hour.value_or(lastSeen(*keyOf(i)).value_or(0)), ghostOf(i), hour.has_value()});
    }
    return drawn;
}

std::vector<Look> SpyholeModel::looks() const {
    std::vector<Look> looks;
    const auto when = at();
    if (!when)
        return looks;
    const auto hours = allEntered();
    for (const auto& pack : m_packs)
        for (const auto& cone : pack.cones)
            if (const auto entry = hours.find({pack.id, cone}); entry != hours.end()) {
                auto& look = looks.emplace_back();
                look.pack = pack.id;
                look.at = *when;
                look.cone = cone;
                look.hour = entry->second;
            }
    return looks;
}

void SpyholeModel::update() {
    m_previewWords.clear();
    m_doubts.clear();
    tellEffect(looks());
    Q_EMIT changed();
}

void SpyholeModel::tellEffect(const std::vector<Look>& looks) {
    const auto preview = m_outside.preview(looks);
    if (!preview.ok()) {
        m_forecast.reset();
        m_previewWords = tr("No forecast: %1.").arg(QString::fromStdString(preview.error().what));
        return;
    }
    m_forecast = preview->without;
    if (m_current >= std::min(preview->with.packs.size(), preview->without.packs.size()))
        return;
    const auto& without = preview->without.packs[m_current];
    const auto told = toldCone(m_packs[m_current], without, m_firingCone);
    const auto style = m_outside.style();
    m_previewWords = looks.empty()
                         ? tr("Without a new look: %1.").arg(downWords(without.cones[told], style))
                         : effectWords(without.cones[told], preview->with.packs[m_current].cones[told],
                                       looks.size(), style);
    m_doubts = doubtsAbout(looks, m_looks, m_packs, *preview, style);
}

bool SpyholeModel::canWrite() const {
    return m_typedTrouble.isEmpty() && !looks().empty();
}

Status SpyholeModel::write() {
    if (!m_typedTrouble.isEmpty())
        return bad(m_typedTrouble);
    if (!at())
        return bad(tr("\"%1\" is no time of day.").arg(std::get<ClockTime>(m_time).text));
    const auto entered = looks();
    if (entered.empty())
        return bad(tr("No cone has an hour yet."));
    takeTypedAsChosen();
    for (const auto& look : entered) {
        if (const auto done = m_outside.write(look); !done) {
            update();
            return done;
        }
        m_chosen.erase({look.pack, look.cone});
    }
    clear();
    Q_EMIT written();
    return {};
}

void SpyholeModel::clear() {
    m_chosen.clear();
    m_typed.clear();
    m_time = MinutesAgo{};
    understandTyped();
    update();
}

} // namespace ringhold
