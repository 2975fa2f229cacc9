// The records as JSON objects, for core/exchange alone: written by toJson(), taken in again by fillFrom().
// The keys are those of the records with the unit in the name; times ISO 8601 UTC to the millisecond; what is
// not known is null.
#pragma once

#include "core/exchange/json_fields.h"
#include "core/firing/firing_record.h"

#include <nlohmann/json.hpp>

namespace ringhold {

nlohmann::ordered_json toJson(const Firing& firing);
nlohmann::ordered_json toJson(const Kiln& kiln);
nlohmann::ordered_json toJson(const Probe& probe);
nlohmann::ordered_json toJson(const Channel& channel);
nlohmann::ordered_json toJson(const Reading& reading); ///< without what is usual: there are so many
nlohmann::ordered_json toJson(const Pack& pack);
nlohmann::ordered_json toJson(const Look& look);
nlohmann::ordered_json toJson(const Setting& setting);
nlohmann::ordered_json toJson(const Note& note);
nlohmann::ordered_json toJson(const FiledOffset& offset);
nlohmann::ordered_json toJson(const AlarmEvent& event);
nlohmann::ordered_json toJson(const StepCorrection& correction);
nlohmann::ordered_json toJson(const MeterStand& stand);
nlohmann::ordered_json toJson(const LogEvent& event);
nlohmann::ordered_json toJson(const Piece& piece);
nlohmann::ordered_json toJson(const Outcome& outcome);
nlohmann::ordered_json toJson(const Photo& photo); ///< its picture in base64
nlohmann::ordered_json toJson(const PhotoMeasure& measure);
nlohmann::ordered_json toJson(const RingRadius& radius);
nlohmann::ordered_json toJson(const SagSeen& answer);
nlohmann::ordered_json toJson(const GlazeCard& card);

/// Throws JsonRefusal. A field that came with version 2 of the file may be missing.
void fillFrom(const JsonFields& fields, Firing& firing);
void fillFrom(const JsonFields& fields, Kiln& kiln);
void fillFrom(const JsonFields& fields, Probe& probe);
void fillFrom(const JsonFields& fields, Channel& channel);
void fillFrom(const JsonFields& fields, Reading& reading);
void fillFrom(const JsonFields& fields, Pack& pack);
void fillFrom(const JsonFields& fields, Look& look);
void fillFrom(const JsonFields& fields, Setting& setting);
void fillFrom(const JsonFields& fields, Note& note);
void fillFrom(const JsonFields& fields, FiledOffset& offset);
void fillFrom(const JsonFields& fields, AlarmEvent& event);
void fillFrom(const JsonFields& fields, StepCorrection& correction);
void fillFrom(const JsonFields& fields, MeterStand& stand);
void fillFrom(const JsonFields& fields, LogEvent& event);
void fillFrom(const JsonFields& fields, Piece& piece);
void fillFrom(const JsonFields& fields, Outcome& outcome);
void fillFrom(const JsonFields& fields, Photo& photo);
void fillFrom(const JsonFields& fields, PhotoMeasure& measure);
void fillFrom(const JsonFields& fields, RingRadius& radius);
void fillFrom(const JsonFields& fields, SagSeen& answer);
void fillFrom(const JsonFields& fields, GlazeCard& card);

/// Each object of a list.
template <class Record>
std::vector<Record> recordsIn(const JsonFields& fields, const char* key) {
    const nlohmann::json& list = fields.list(key);
    std::vector<Record> records(list.size());
    for (std::size_t i = 0; i < list.size(); ++i)
        fillFrom(JsonFields(list[i], fields.pathOf(key) + "[" + std::to_string(i) + "]"), records[i]);
    return records;
}

} // namespace ringhold
