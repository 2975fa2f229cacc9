#include "core/book/record_text.h"
#include "core/exchange/file.h"
#include "core/exchange/firing_json.h"
#include "core/exchange/stamp.h"
#include "core/plan/plan_file.h"

#include <nlohmann/json.hpp>

namespace ringhold {

namespace {

using Json = nlohmann::ordered_json;

template <class Id>
requires std::is_enum_v<Id> Json number(Id id) {
    return static_cast<std::int64_t>(id);
}

Json stamp(Instant at) {
    std::string text;
    appendStamp(text, at);
    return text;
}

template <class T, class Convert>
Json orNull(const std::optional<T>& value, const Convert& convert) {
    return value ? Json(convert(*value)) : Json(nullptr);
}

Json orNull(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json toJson(const Firing& firing) {
    return {{"id", number(firing.id)},
            {"kiln", number(firing.kiln)},
            {"title", firing.title},
            {"began", stamp(firing.began)},
            {"ended", orNull(firing.ended, stamp)},
            {"plan", orNull(firing.plan, [](const Plan& plan) { return Json::parse(formatPlan(plan)); })},
            {"model", firing.modelJson}};
}

Json toJson(const Kiln& kiln) {
    return {{"id", number(kiln.id)},
            {"name", kiln.name},
            {"fuel", bookText(kiln.fuel)},
            {"volume_L", orNull(kiln.volume_L)},
            {"rated_W", orNull(kiln.ratedPower, [](Power p) { return p.watts; })},
            {"rated_V", orNull(kiln.ratedVolts, [](Volts v) { return v.volts; })},
            {"price_per_kWh", orNull(kiln.pricePerKilowattHour)},
            {"note", kiln.note}};
}

Json toJson(const Probe& probe) {
    return {{"id", number(probe.id)},
            {"kiln", number(probe.kiln)},
            {"label", probe.label},
            {"type", name(probe.type)},
            {"position", probe.position},
            {"fitted", orNull(probe.fitted, stamp)},
            {"retired", orNull(probe.retired, stamp)}};
}

Json toJson(const Channel& channel) {
    return {{"id", number(channel.id)},
            {"firing", number(channel.firing)},
            {"quantity", bookText(channel.quantity)},
            {"label", channel.label},
            {"probe", orNull(channel.probe, number<ProbeId>)}};
}

/// There are so many that what is usual is left out.
Json toJson(const Reading& reading) {
    Json json{{"at", stamp(reading.at)}, {"channel", number(reading.channel)}, {"value", reading.value}};
    if (reading.origin == Origin::hand)
        json["by_hand"] = true;
    if (reading.struck)
        json["struck"] = true;
    return json;
}

Json toJson(const Pack& pack) {
    return {{"id", number(pack.id)},   {"firing", number(pack.firing)}, {"place", pack.place},
            {"type", name(pack.type)}, {"cones", pack.cones},           {"leans_left", pack.leansLeft}};
}

Json toJson(const Look& look) {
    return {{"id", number(look.id)}, {"pack", number(look.pack)}, {"at", stamp(look.at)}, {"cone", look.cone},
            {"hour", look.hour},     {"cold", look.cold},         {"struck", look.struck}};
}

Json toJson(const Setting& setting) {
    return {{"id", number(setting.id)}, {"firing", number(setting.firing)}, {"at", stamp(setting.at)},
            {"what", setting.what},     {"value", setting.value},           {"struck", setting.struck}};
}

Json toJson(const Note& note) {
    return {{"id", number(note.id)},
            {"firing", number(note.firing)},
            {"at", stamp(note.at)},
            {"text", note.text},
            {"struck", note.struck}};
}

Json toJson(const Piece& piece) {
    return {{"id", number(piece.id)}, {"firing", number(piece.firing)}, {"name", piece.name},
            {"glaze", piece.glaze},   {"shelf", piece.shelf},           {"catcher", piece.catcher},
            {"sagger", piece.sagger}};
}

Json toJson(const Outcome& outcome) {
    return {{"piece", number(outcome.piece)},
            {"crystals", orNull(outcome.crystals, [](Crystals c) { return bookText(c); })},
            {"largest_mm", orNull(outcome.largest_mm)},
            {"rings", orNull(outcome.rings, [](int rings) { return rings; })},
            {"faults", outcome.faults},
            {"grade", outcome.grade},
            {"note", outcome.note}};
}

Json toJson(const FiledOffset& offset) {
    return {{"firing", number(offset.firing)}, {"kiln", number(offset.kiln)},
            {"probe", number(offset.probe)},   {"place", offset.place},
            {"at", stamp(offset.at)},          {"mean_C", offset.mean.celsius()},
            {"sd_C", offset.sd.celsius()}};
}

/// One record on one line. Text that is no UTF-8 cannot stand in JSON: what is wrong in it is replaced.
std::string line(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

template <class Record>
void appendList(std::string& out, const char* key, const std::vector<Record>& records) {
    out += ",\n\"" + std::string(key) + "\": [";
    for (const auto& record : records) {
        out += &record == &records.front() ? "\n " : ",\n ";
        out += line(toJson(record));
    }
    out += "]";
}

} // namespace

std::string formatFiring(const FiringRecord& record) {
    std::string out = "{\"ringhold_firing\": 1,\n\"firing\": " + line(toJson(record.firing));
    out += ",\n\"kiln\": " + line(toJson(record.kiln));
    appendList(out, "probes", record.probes);
    appendList(out, "channels", record.channels);
    appendList(out, "packs", record.packs);
    appendList(out, "looks", record.looks);
    appendList(out, "settings", record.settings);
    appendList(out, "notes", record.notes);
    appendList(out, "pieces", record.pieces);
    appendList(out, "outcomes", record.outcomes);
    appendList(out, "filed_offsets", record.filedOffsets);
    appendList(out, "readings", record.readings);
    return out + "}\n";
}

Status writeFiring(const std::filesystem::path& path, const FiringRecord& record) {
    return writeFile(path, formatFiring(record));
}

} // namespace ringhold
