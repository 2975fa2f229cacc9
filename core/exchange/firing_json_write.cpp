#include "core/exchange/file.h"
#include "core/exchange/firing_json.h"
#include "core/exchange/record_json.h"

namespace ringhold {

namespace {

using Json = nlohmann::ordered_json;

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
    std::string out = "{\"ringhold_firing\": 2,\n\"firing\": " + line(toJson(record.firing));
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
    appendList(out, "alarm_events", record.alarmEvents);
    appendList(out, "step_corrections", record.stepCorrections);
    appendList(out, "meter_stands", record.meterStands);
    appendList(out, "log_events", record.logEvents);
    appendList(out, "glaze_cards", record.glazeCards);
    appendList(out, "photo_measures", record.photoMeasures);
    appendList(out, "ring_radii", record.ringRadii);
    appendList(out, "sags_seen", record.sagsSeen);
    appendList(out, "photos", record.photos);
    appendList(out, "readings", record.readings);
    return out + "}\n";
}

Status writeFiring(const std::filesystem::path& path, const FiringRecord& record) {
    return writeFile(path, formatFiring(record));
}

} // namespace ringhold
