#include "core/exchange/file.h"
#include "core/exchange/firing_json.h"
#include "core/exchange/record_json.h"

#include <algorithm>
#include <set>

namespace ringhold {

namespace {

using nlohmann::json;

/// The ids that a list gives; none may stand twice.
template <class Record>
auto idsOf(const char* key, const std::vector<Record>& records) {
    std::set<decltype(Record::id)> ids;
    for (const auto& record : records)
        if (!ids.insert(record.id).second)
            refuseJson(std::string(key) + " has the id " +
                       std::to_string(static_cast<std::int64_t>(record.id)) + " twice");
    return ids;
}

/// Every id that `get` finds in a record (a pointer, or nothing) must be among the known ones.
template <class Record, class Id, class Get>
void requireKnown(const char* key, const std::vector<Record>& records, const std::set<Id>& known,
                  const Get& get) {
    for (std::size_t i = 0; i < records.size(); ++i)
        if (const Id* wanted = get(records[i]); wanted && !known.contains(*wanted))
            refuseJson(std::string(key) + "[" + std::to_string(i) + "] names the id " +
                       std::to_string(static_cast<std::int64_t>(*wanted)) + ", which is not in the file");
}

void checkIds(const FiringRecord& record) {
    if (record.firing.kiln != record.kiln.id)
        refuseJson("firing.kiln and kiln.id are not the same");
    const auto probes = idsOf("probes", record.probes);
    const auto channels = idsOf("channels", record.channels);
    const auto packs = idsOf("packs", record.packs);
    const auto pieces = idsOf("pieces", record.pieces);
    requireKnown("channels", record.channels, probes,
                 [](const Channel& c) { return c.probe ? &*c.probe : nullptr; });
    requireKnown("readings", record.readings, channels, [](const Reading& r) { return &r.channel; });
    requireKnown("looks", record.looks, packs, [](const Look& l) { return &l.pack; });
    requireKnown("outcomes", record.outcomes, pieces, [](const Outcome& o) { return &o.piece; });
    requireKnown("photos", record.photos, pieces, [](const Photo& p) { return &p.piece; });
    requireKnown("photo_measures", record.photoMeasures, idsOf("photos", record.photos),
                 [](const PhotoMeasure& m) { return &m.photo; });
    requireKnown("ring_radii", record.ringRadii, pieces, [](const RingRadius& r) { return &r.piece; });
    requireKnown("sags_seen", record.sagsSeen, pieces, [](const SagSeen& s) { return &s.piece; });
}

void checkOrder(const std::vector<Reading>& readings) {
    const auto before = [](const Reading& a, const Reading& b) { return a.at < b.at; };
    const auto fault = std::is_sorted_until(readings.begin(), readings.end(), before);
    if (fault != readings.end())
        refuseJson("readings[" + std::to_string(fault - readings.begin()) +
                   "] is earlier than the one before it");
}

/// The version that the file was written by.
std::int64_t versionOf(const JsonFields& file) {
    if (!file.has("ringhold_firing"))
        refuseJson("is no firing: it has no \"ringhold_firing\"");
    const auto version = file.integer("ringhold_firing");
    if (version > 2)
        throw JsonRefusal{{ErrorKind::foreign, "this firing was written by a newer Ringhold"}};
    if (version < 1)
        refuseJson("ringhold_firing must be 1 or 2");
    return version;
}

/// What the first version has.
void readFirst(const JsonFields& file, FiringRecord& record) {
    fillFrom(file.object("firing"), record.firing);
    fillFrom(file.object("kiln"), record.kiln);
    record.probes = recordsIn<Probe>(file, "probes");
    record.channels = recordsIn<Channel>(file, "channels");
    record.packs = recordsIn<Pack>(file, "packs");
    record.looks = recordsIn<Look>(file, "looks");
    record.settings = recordsIn<Setting>(file, "settings");
    record.notes = recordsIn<Note>(file, "notes");
    record.pieces = recordsIn<Piece>(file, "pieces");
    record.outcomes = recordsIn<Outcome>(file, "outcomes");
    record.filedOffsets = recordsIn<FiledOffset>(file, "filed_offsets");
    record.readings = recordsIn<Reading>(file, "readings");
}

/// What came with the second.
void readSecond(const JsonFields& file, FiringRecord& record) {
    record.alarmEvents = recordsIn<AlarmEvent>(file, "alarm_events");
    record.stepCorrections = recordsIn<StepCorrection>(file, "step_corrections");
    record.meterStands = recordsIn<MeterStand>(file, "meter_stands");
    record.logEvents = recordsIn<LogEvent>(file, "log_events");
    record.glazeCards = recordsIn<GlazeCard>(file, "glaze_cards");
    record.photos = recordsIn<Photo>(file, "photos");
    record.photoMeasures = recordsIn<PhotoMeasure>(file, "photo_measures");
    record.ringRadii = recordsIn<RingRadius>(file, "ring_radii");
    record.sagsSeen = recordsIn<SagSeen>(file, "sags_seen");
}

FiringRecord recordFrom(const JsonFields& file) {
    FiringRecord record;
    const auto version = versionOf(file);
    readFirst(file, record);
    if (version >= 2)
        readSecond(file, record);
    checkIds(record);
    if (version >= 2)
        requireKnown("filed_offsets", record.filedOffsets, idsOf("probes", record.probes),
                     [](const FiledOffset& o) { return &o.probe; });
    checkOrder(record.readings);
    return record;
}

} // namespace

Result<FiringRecord> parseFiring(std::string_view text, const std::string& fileName) {
    try {
        const json parsed = parsedJson(text);
        return recordFrom(JsonFields(parsed, ""));
    } catch (const JsonRefusal& refusal) {
        Error error = refusal.error;
        error.file = fileName;
        return error;
    }
}

Result<FiringRecord> readFiring(const std::filesystem::path& path) {
    const auto text = readFile(path);
    if (!text)
        return text.error();
    return parseFiring(*text, path.string());
}

} // namespace ringhold
