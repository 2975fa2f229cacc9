#include "ui/spread/kept_lines.h"

#include "core/firing/live_firing.h"
#include "core/firing/written_meter.h"

#include <algorithm>

namespace ringhold {

namespace {

template <class Id>
Status statusOf(const Result<Id>& id) {
    return id ? Status() : Status(id.error());
}

struct Keeper {
    LiveFiring& firing;
    Instant at;

    Status operator()(const WrittenNote& n) const { return statusOf(firing.writeNote(at, n.text)); }
    Status operator()(const WrittenReading& r) const { return firing.writeReading(at, r.value); }
    Status operator()(const WrittenSetting& s) const {
        return isMeter(s) ? keepMeter(s) : statusOf(firing.writeSetting(at, s.what, s.value));
    }
    Status operator()(const WrittenLooks& l) const {
        Status kept;
        for (const auto& look : l.looks) {
            const auto& packs = firing.record().packs;
            const auto pack = std::ranges::find_if(
                packs, [&](const Pack& p) { return std::ranges::count(p.cones, look.cone) > 0; });
            if (const auto id = firing.writeLook(pack->id, at, look.cone, look.hour); !id)
                kept = id.error();
        }
        return kept;
    }
    Status keepMeter(const WrittenSetting& setting) const {
        const bool gas = firing.record().kiln.fuel == Fuel::gas;
        const auto meter = readMeter(setting, gas ? MeterUnit::cubicMetres : MeterUnit::kilowattHours);
        return meter ? statusOf(firing.writeMeterStand(at, meter->stand, meter->unit))
                     : Status(meter.error());
    }
};

struct Striker {
    LiveFiring& firing;
    Instant when;
    bool restore;

    Status operator()(const ReadingKey& r) const {
        return restore ? firing.restoreReading(r.channel, r.at, when)
                       : firing.strikeReading(r.channel, r.at, when);
    }
    template <class Id>
    Status operator()(Id id) const {
        return restore ? firing.restore(id, when) : firing.strike(id, when);
    }
};

} // namespace

Status keepLine(LiveFiring& firing, const WrittenLine& line) {
    return std::visit(Keeper{firing, line.at}, line.what);
}

Status strikeLine(LiveFiring& firing, const LineKey& line, Instant when, bool restore) {
    return std::visit(Striker{firing, when, restore}, line);
}

} // namespace ringhold
