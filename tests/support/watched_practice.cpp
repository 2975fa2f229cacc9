#include "tests/support/watched_practice.h"

#include <algorithm>
#include <cmath>

namespace ringhold::test {

namespace {

const Instant practiceBegan{std::chrono::hours(492000)};

FiringRecord recordOf(const PracticeSettings& settings, const WatchedPractice::Options& options) {
    FiringRecord record;
    record.firing = {
        FiringId{1}, KilnId{1}, "practice", practiceBegan, {}, options.watched.value_or(settings.plan), {}};
    record.kiln = {
        KilnId{1}, "practice", Fuel::electric, {}, settings.kiln.fullPower, settings.kiln.ratedVolts, {}, {}};
    std::vector<std::string> cones;
    for (const auto& cone : settings.cones)
        cones.push_back(cone.cone);
    if (!cones.empty() && options.forecast)
        record.packs = {{PackId{1}, FiringId{1}, "middle", ConeType::selfSupporting, cones, false}};
    return record;
}

} // namespace

WatchedPractice::WatchedPractice(PracticeSettings settings, Options options)
    : m_options(std::move(options)), m_kiln(settings), m_began(practiceBegan) {
    const auto habits = m_options.potter ? habitsFor(settings.plan) : std::nullopt;
    if (habits)
        m_potter.emplace(*habits, settings.seed);
    auto record = recordOf(settings, m_options);
    const std::vector<OffsetPrior> priors(record.packs.size(), offsetPriorFor(nullptr, "middle", {}));
    m_firing = std::make_unique<LiveFiring>(std::move(record), m_journal, m_log);
    auto made = FiringWatch::make({m_firing.get(), priors}, m_options.watch);
    m_watch = std::move(made).value();
    m_firing->setListener(this);
}

bool WatchedPractice::step() {
    if (m_kiln.finished())
        return false;
    m_kiln.advance(m_options.spacing);
    read();
    look();
    for (auto& event : m_watch->check(now()))
        m_events.push_back(std::move(event));
    return true;
}

void WatchedPractice::runUntil(Duration until) {
    while (elapsed() < until && step())
        ;
}

void WatchedPractice::read() {
    const auto reading = m_kiln.reading();
    if (reading.silent)
        return;
    auto shown = reading.probe;
    if (shown && m_options.roundedTo_C > 0)
        shown = Temperature::fromCelsius(std::round(shown->celsius() / m_options.roundedTo_C) *
                                         m_options.roundedTo_C);
    if (m_options.byHand) {
        if (shown)
            (void)m_firing->writeReading(now(), *shown);
        return;
    }
    if (m_options.electrics) {
        (void)m_firing->take({now(), "volts", Quantity::lineVolts, reading.line.volts});
        (void)m_firing->take({now(), "amps", Quantity::lineAmps, reading.amps.amps});
    }
    (void)m_firing->take(
        {now(), "probe", Quantity::temperature, shown ? std::optional(shown->celsius()) : std::nullopt});
}

void WatchedPractice::look() {
    if (!m_potter)
        return;
    for (const auto& seen : m_potter->watch(now(), m_kiln))
        (void)m_firing->writeLook(PackId{1}, seen.at, seen.cone, seen.hour);
}

const AlarmEvent* WatchedPractice::firstRaised(Instant from,
                                               const std::function<bool(const AlarmEvent&)>& counts) const {
    const auto found = std::ranges::find_if(m_events, [&](const AlarmEvent& event) {
        return event.at >= from && event.change == AlarmChange::raised && counts(event);
    });
    return found == m_events.end() ? nullptr : &*found;
}

} // namespace ringhold::test
