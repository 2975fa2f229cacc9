#include "app/demo/demo_run.h"

#include "core/book/reader.h"
#include "core/book/writer.h"
#include "core/kiln/atmosphere.h"
#include "core/kiln/practice_firing.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

constexpr std::chrono::seconds samplePeriod{30};
constexpr std::chrono::minutes untilAcknowledged{4};
constexpr double gasHeat_Wh_per_m3 = 9.8e3; // of natural gas, lower value: common practice, no source
const std::array<std::string, 3> packCones{"8", "9", "10"};

PracticeSettings settingsOf(const DemoStudio& studio, const DemoFiring& firing, std::uint64_t seed) {
    const auto& kiln = studio.kilns[firing.kiln];
    PracticeSettings settings = drawnPracticeSettings(firing.plan, seed);
    settings.kiln = kiln.constants;
    settings.probeOffset = kiln.probes[firing.probe].offset;
    settings.place = kiln.place;
    settings.faults = firing.faults;
    if (firing.wear > 1)
        settings.faults.push_back({FaultKind::wornElements, Duration{0}, std::nullopt, firing.wear});
    return settings;
}

/// Writes nothing for an empty text.
Status writeNote(LiveFiring& live, Instant at, const std::string& text) {
    if (text.empty())
        return {};
    const auto written = live.writeNote(at, text);
    return written ? Status() : Status(written.error());
}

} // namespace

Ticket DemoJournal::append(const Reading& reading) {
    m_readings.push_back(reading);
    if (const auto kept = m_kept.find(reading.channel); kept != m_kept.end())
        m_readings.back().channel = kept->second;
    return m_readings.size();
}

void DemoJournal::keep(const Channel& channel) {
    if (channel.id >= ChannelId{}) {
        if (const auto altered = m_writer.alter(channel); !altered)
            m_trouble = altered;
        return;
    }
    if (const auto added = m_writer.add(channel))
        m_kept[channel.id] = *added;
    else
        m_trouble = added.error();
}

DemoRun::DemoRun(const Book& book, const DemoStudio& studio, const DemoFiring& firing, std::uint64_t seed)
    : m_book(book), m_studio(studio), m_firing(firing), m_kiln(settingsOf(studio, firing, seed)),
      m_potter(habitsFor(firing.plan).value_or(PotterHabits{}), seed), m_log(book), m_journal(book) {}

Result<std::unique_ptr<DemoRun>> DemoRun::begin(const Book& book, const DemoStudio& studio,
                                                const DemoFiring& firing, std::uint64_t seed) {
    std::unique_ptr<DemoRun> run(new DemoRun(book, studio, firing, seed));
    if (const Status begun = run->writeBeginning(seed); !begun)
        return begun.error();
    if (const Status watched = run->watchIt(); !watched)
        return watched.error();
    return run;
}

Status DemoRun::writeBeginning(std::uint64_t seed) {
    BookWriter writer(m_book);
    const auto id =
        writer.add(Firing{{}, kiln().kiln.id, m_firing.title, m_firing.lit, {}, m_firing.plan, {}});
    if (!id)
        return id.error();
    Pack pack;
    pack.firing = *id;
    pack.cones.assign(packCones.begin(), packCones.end());
    for (const auto& shelf : kiln().shelves) {
        pack.place = shelf.name + " shelf";
        pack.shelf = shelf.name;
        pack.spot = MapSpot{0.5, 0.92};
        const bool seen = &shelf == &kiln().shelves[1];
        if (!seen && seed % 2 == 0) // packs on the other shelves in every second firing
            continue;
        if (const auto added = writer.add(pack); !added)
            return added.error();
    }
    const auto channel =
        writer.add(Channel{{}, *id, Quantity::temperature, "", probe().id}); // known before it is heard
    if (!channel)
        return channel.error();
    m_meterBegan = std::round(4000 + 1000 * inHours(m_firing.lit.time_since_epoch()) / 24 / 365);
    const auto record = BookReader(m_book).whole(*id);
    if (!record)
        return record.error();
    m_live = std::make_unique<LiveFiring>(*record, m_journal, m_log);
    return {};
}

Status DemoRun::watchIt() {
    const auto filed = BookReader(m_book).filedOffsets(kiln().kiln.id);
    if (!filed)
        return filed.error();
    std::vector<OffsetPrior> priors;
    for (const auto& pack : m_live->record().packs)
        priors.push_back(offsetPriorFor(&probe(), pack.place, *filed));
    WatchSettings settings;
    settings.style.zone = demoZone;
    settings.forecastEvery = std::chrono::hours(1); // each costs some tens of ms
    auto watch = FiringWatch::make({m_live.get(), priors}, settings);
    if (!watch)
        return watch.error();
    m_watch = std::move(*watch);
    m_live->setListener(this);
    return {};
}

Status DemoRun::fire() {
    if (const Status metered = writeMeter(m_meterBegan); !metered)
        return metered;
    while (!m_kiln.finished())
        if (const Status lived = step(); !lived)
            return lived;
    if (!m_journal.trouble())
        return m_journal.trouble();
    if (const auto kept = BookWriter(m_book).add(m_journal.readings()); !kept)
        return kept.error();
    const double perUnit = hasFlame() ? gasHeat_Wh_per_m3 : 1000;
    if (const Status metered = writeMeter(std::round((m_meterBegan + m_energy_Wh / perUnit) * 10) / 10);
        !metered)
        return metered;
    return unload();
}

Status DemoRun::step() {
    m_kiln.advance(samplePeriod);
    m_energy_Wh += m_kiln.power().watts * inHours(samplePeriod);
    m_felt.push_back({now(), m_kiln.state().chamber + kiln().place});
    for (const auto part : {&DemoRun::read, &DemoRun::look, &DemoRun::tellStep, &DemoRun::judge})
        if (const Status done = (this->*part)(); !done)
            return done;
    return {};
}

Status DemoRun::read() {
    const auto reading = m_kiln.reading();
    if (reading.silent)
        return {};
    const auto degrees =
        reading.probe ? std::optional(std::round(reading.probe->celsius() * 10) / 10) : std::nullopt;
    if (const Status taken = m_live->take({now(), "probe", Quantity::temperature, degrees}); !taken)
        return taken;
    if (hasFlame())
        return readFlue(m_kiln.state().chamber);
    if (const Status taken = m_live->take({now(), "volts", Quantity::lineVolts, reading.line.volts}); !taken)
        return taken;
    return m_live->take({now(), "amps", Quantity::lineAmps, reading.amps.amps});
}

/// With the burners off air comes in.
Status DemoRun::readFlue(Temperature at) {
    if (!oxygenProbeIsHot(at))
        return {};
    const bool shut = m_firing.reducing && m_firing.reducing->activeAt(elapsed());
    m_reduced = m_reduced || shut;
    const double share = shut                       ? m_firing.reducing->size
                         : m_kiln.power().watts > 0 ? m_firing.oxygenShare
                                                    : 0.18;
    const double millivolts = std::round(oxygenProbeAt(share, at).millivolts * 10) / 10;
    return m_live->take({now(), "flue", Quantity::oxygenMillivolts, millivolts});
}

Status DemoRun::look() {
    if (m_potter.sawFiringConeDown())
        return {};
    const auto& packs = m_live->record().packs;
    const auto seen = std::ranges::find(packs, kiln().shelves[1].name, &Pack::shelf);
    for (const auto& each : m_potter.watch(now(), m_kiln))
        if (const auto written = m_live->writeLook(seen->id, each.at, each.cone, each.hour); !written)
            return written.error();
    return {};
}

/// Notes and, where there is a flame, settings when the plan goes on.
Status DemoRun::tellStep() {
    if (m_step == m_kiln.step())
        return {};
    const std::size_t step = m_kiln.step();
    m_step = step;
    if (step < m_firing.notes.size())
        if (const Status noted = writeNote(*m_live, now(), m_firing.notes[step]); !noted)
            return noted;
    static const std::array<std::array<const char*, 2>, 4> settings{
        {{"18 mbar", "half open"}, {"24 mbar", "third open"}, {"off", "shut"}, {"6 mbar", "quarter open"}}};
    if (!hasFlame() || step >= settings.size())
        return {};
    for (const auto& [what, value] :
         {std::pair("gas pressure", settings[step][0]), {"damper", settings[step][1]}})
        if (const auto written = m_live->writeSetting(now(), what, value); !written)
            return written.error();
    return {};
}

Status DemoRun::judge() {
    for (const auto& event : m_watch->check(now())) {
        if (event.change == AlarmChange::raised || event.change == AlarmChange::worsened)
            m_acknowledgeAt = now() + untilAcknowledged;
        if (const Status kept = m_log.add(event); !kept)
            return kept;
    }
    return acknowledge();
}

Status DemoRun::acknowledge() {
    if (!m_acknowledgeAt || now() < *m_acknowledgeAt)
        return {};
    m_acknowledgeAt.reset();
    for (const auto& event : m_watch->acknowledgeAll(now(), demoPotter))
        if (const Status kept = m_log.add(event); !kept)
            return kept;
    return {};
}

Status DemoRun::writeMeter(double stand) {
    const MeterStand read{
        {}, id(), now(), stand, hasFlame() ? MeterUnit::cubicMetres : MeterUnit::kilowattHours, false};
    const auto added = BookWriter(m_book).add(read);
    return added ? Status() : Status(added.error());
}

/// The cones of every pack as they lie in the cold kiln: those of other shelves felt more or less.
Status DemoRun::unload() {
    BookWriter writer(m_book);
    const Instant morning = now() + std::chrono::hours(14);
    for (const auto& pack : m_live->record().packs) {
        const auto shelf = std::ranges::find(kiln().shelves, pack.shelf, &DemoShelf::name);
        for (const auto& nature : m_kiln.settings().cones) {
            PracticeCone cone(nature);
            for (const auto& point : m_felt)
                cone.advance(point.temperature + shelf->difference, samplePeriod);
            const double hour = std::clamp(std::round(cone.hour() * 2) / 2, 0.0, 6.0);
            if (const auto added = writer.add(Look{{}, pack.id, morning, nature.cone, hour, true, false});
                !added)
                return added.error();
        }
    }
    if (const Status filed = fileOffsets(); !filed)
        return filed;
    return writer.end(id(), now());
}

/// What the looks and the cold packs told.
Status DemoRun::fileOffsets() {
    const auto record = BookReader(m_book).whole(id());
    const auto filed = BookReader(m_book).filedOffsets(kiln().kiln.id);
    if (!record || !filed)
        return record ? filed.error() : record.error();
    std::vector<OffsetPrior> priors;
    for (const auto& pack : record->packs)
        priors.push_back(offsetPriorFor(&probe(), pack.place, *filed));
    auto forecast = FiringForecast::make(record->packs, priors);
    if (!forecast)
        return forecast.error();
    const Curve& curve = m_live->controlCurve();
    if (const Status done = forecast->restart(curve, curve.front().at, record->looks); !done)
        return done;
    const auto told = forecast->forecast(nullptr);
    if (!told)
        return told.error();
    for (std::size_t i = 0; i < record->packs.size(); ++i)
        if (const Status kept =
                BookWriter(m_book).file({id(), kiln().kiln.id, probe().id, record->packs[i].place, now(),
                                         told->packs[i].offsetMean, told->packs[i].offsetSd});
            !kept)
            return kept;
    return {};
}

DemoCourse DemoRun::course() const {
    std::vector<Ring> rings;
    for (const auto& step : m_firing.plan.steps)
        if (const auto* meant = std::get_if<Rings>(&step))
            rings = countRings(m_live->controlCurve(), {meant->high, meant->low});
    return {m_felt, rings, m_reduced};
}

} // namespace ringhold
