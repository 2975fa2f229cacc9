#include "core/book/record_text.h"
#include "core/exchange/file.h"
#include "core/exchange/firing_json.h"
#include "core/exchange/json_fields.h"
#include "core/plan/plan_file.h"

#include <algorithm>
#include <set>

namespace ringhold {

namespace {

using nlohmann::json;

template <class Id>
Id id(const JsonFields& fields, const char* key) {
    return Id{fields.integer(key)};
}

/// One of a few words; `named` gives nothing for any other.
template <class Enum>
Enum word(const JsonFields& fields, const char* key, std::optional<Enum> (*named)(std::string_view)) {
    const std::string text = fields.text(key);
    const auto value = named(text);
    if (!value)
        refuseJson(fields.pathOf(key) + " is \"" + text + "\", which is not known");
    return *value;
}

bool isSet(const JsonFields& fields, const char* key) {
    return fields.maybeTruth(key).value_or(false);
}

void read(const JsonFields& fields, Firing& firing) {
    firing.id = id<FiringId>(fields, "id");
    firing.kiln = id<KilnId>(fields, "kiln");
    firing.title = fields.text("title");
    firing.began = fields.instant("began");
    firing.ended = fields.maybeInstant("ended");
    firing.modelJson = fields.text("model");
    if (!fields.has("plan"))
        return;
    auto plan = parsePlan(fields.raw("plan").dump(), fields.pathOf("plan"));
    if (!plan)
        refuseJson(Error{plan.error().kind, plan.error().what, plan.error().file}.text());
    firing.plan = std::move(*plan);
}

void read(const JsonFields& fields, Kiln& kiln) {
    kiln.id = id<KilnId>(fields, "id");
    kiln.name = fields.text("name");
    kiln.fuel = word(fields, "fuel", fuelOf);
    kiln.volume_L = fields.maybeNumber("volume_L");
    if (const auto watts = fields.maybeNumber("rated_W"))
        kiln.ratedPower = Power{*watts};
    if (const auto volts = fields.maybeNumber("rated_V"))
        kiln.ratedVolts = Volts{*volts};
    kiln.pricePerKilowattHour = fields.maybeNumber("price_per_kWh");
    kiln.note = fields.text("note");
}

void read(const JsonFields& fields, Probe& probe) {
    probe.id = id<ProbeId>(fields, "id");
    probe.kiln = id<KilnId>(fields, "kiln");
    probe.label = fields.text("label");
    probe.type = word(fields, "type", thermocoupleTypeNamed);
    probe.position = fields.text("position");
    probe.fitted = fields.maybeInstant("fitted");
    probe.retired = fields.maybeInstant("retired");
}

void read(const JsonFields& fields, Channel& channel) {
    channel.id = id<ChannelId>(fields, "id");
    channel.firing = id<FiringId>(fields, "firing");
    channel.quantity = word(fields, "quantity", quantityOf);
    channel.label = fields.text("label");
    if (const auto probe = fields.maybeInteger("probe"))
        channel.probe = ProbeId{*probe};
}

void read(const JsonFields& fields, Reading& reading) {
    reading.at = fields.instant("at");
    reading.channel = id<ChannelId>(fields, "channel");
    reading.value = fields.number("value");
    reading.origin = isSet(fields, "by_hand") ? Origin::hand : Origin::instrument;
    reading.struck = isSet(fields, "struck");
}

void read(const JsonFields& fields, Pack& pack) {
    pack.id = id<PackId>(fields, "id");
    pack.firing = id<FiringId>(fields, "firing");
    pack.place = fields.text("place");
    pack.type = word(fields, "type", coneTypeNamed);
    for (const json& cone : fields.list("cones")) {
        if (!cone.is_string())
            refuseJson(fields.pathOf("cones") + " must be a list of texts");
        pack.cones.push_back(cone.get<std::string>());
    }
    pack.leansLeft = isSet(fields, "leans_left");
}

void read(const JsonFields& fields, Look& look) {
    look.id = id<LookId>(fields, "id");
    look.pack = id<PackId>(fields, "pack");
    look.at = fields.instant("at");
    look.cone = fields.text("cone");
    look.hour = fields.number("hour");
    if (look.hour < 0 || look.hour > 6)
        refuseJson(fields.pathOf("hour") + " must be 0 (standing) to 6 (down)");
    look.cold = isSet(fields, "cold");
    look.struck = isSet(fields, "struck");
}

void read(const JsonFields& fields, Setting& setting) {
    setting.id = id<SettingId>(fields, "id");
    setting.firing = id<FiringId>(fields, "firing");
    setting.at = fields.instant("at");
    setting.what = fields.text("what");
    setting.value = fields.text("value");
    setting.struck = isSet(fields, "struck");
}

void read(const JsonFields& fields, Note& note) {
    note.id = id<NoteId>(fields, "id");
    note.firing = id<FiringId>(fields, "firing");
    note.at = fields.instant("at");
    note.text = fields.text("text");
    note.struck = isSet(fields, "struck");
}

void read(const JsonFields& fields, Piece& piece) {
    piece.id = id<PieceId>(fields, "id");
    piece.firing = id<FiringId>(fields, "firing");
    piece.name = fields.text("name");
    piece.glaze = fields.text("glaze");
    piece.shelf = fields.text("shelf");
    piece.catcher = isSet(fields, "catcher");
    piece.sagger = isSet(fields, "sagger");
}

void read(const JsonFields& fields, Outcome& outcome) {
    outcome.piece = id<PieceId>(fields, "piece");
    if (fields.has("crystals"))
        outcome.crystals = word(fields, "crystals", crystalsOf);
    outcome.largest_mm = fields.maybeNumber("largest_mm");
    if (const auto rings = fields.maybeInteger("rings")) {
        if (*rings < 0 || *rings > 1'000'000)
            refuseJson(fields.pathOf("rings") + " is no count of rings");
        outcome.rings = static_cast<int>(*rings);
    }
    outcome.faults = fields.text("faults");
    outcome.grade = fields.text("grade");
    outcome.note = fields.text("note");
}

void read(const JsonFields& fields, FiledOffset& offset) {
    offset.firing = id<FiringId>(fields, "firing");
    offset.kiln = id<KilnId>(fields, "kiln");
    offset.probe = id<ProbeId>(fields, "probe");
    offset.place = fields.text("place");
    offset.at = fields.instant("at");
    offset.mean = TemperatureDifference::fromCelsius(fields.number("mean_C"));
    offset.sd = TemperatureDifference::fromCelsius(fields.number("sd_C"));
}

template <class Record>
void readList(const JsonFields& file, const char* key, std::vector<Record>& records) {
    const json& list = file.list(key);
    records.resize(list.size());
    for (std::size_t i = 0; i < list.size(); ++i)
        read(JsonFields(list[i], std::string(key) + "[" + std::to_string(i) + "]"), records[i]);
}

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
}

void checkOrder(const std::vector<Reading>& readings) {
    const auto before = [](const Reading& a, const Reading& b) { return a.at < b.at; };
    const auto fault = std::is_sorted_until(readings.begin(), readings.end(), before);
    if (fault != readings.end())
        refuseJson("readings[" + std::to_string(fault - readings.begin()) +
                   "] is earlier than the one before it");
}

void checkVersion(const JsonFields& file) {
    if (!file.has("ringhold_firing"))
        refuseJson("is no firing: it has no \"ringhold_firing\"");
    if (file.integer("ringhold_firing") > 1)
        throw JsonRefusal{{ErrorKind::foreign, "this firing was written by a newer Ringhold"}};
    if (file.integer("ringhold_firing") != 1)
        refuseJson("ringhold_firing must be 1");
}

FiringRecord recordFrom(const JsonFields& file) {
    checkVersion(file);
    FiringRecord record;
    read(file.object("firing"), record.firing);
    read(file.object("kiln"), record.kiln);
    readList(file, "probes", record.probes);
    readList(file, "channels", record.channels);
    readList(file, "packs", record.packs);
    readList(file, "looks", record.looks);
    readList(file, "settings", record.settings);
    readList(file, "notes", record.notes);
    readList(file, "pieces", record.pieces);
    readList(file, "outcomes", record.outcomes);
    readList(file, "filed_offsets", record.filedOffsets);
    readList(file, "readings", record.readings);
    checkIds(record);
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
