// A whole firing as one JSON file, to hand on and to take in again.
//
// {"ringhold_firing":2, "firing":{...}, "kiln":{...}, "probes":[...], "channels":[...], "packs":[...],
//  "looks":[...], "settings":[...], "notes":[...], "pieces":[...], "outcomes":[...], "filed_offsets":[...],
//  "alarm_events":[...], "step_corrections":[...], "meter_stands":[...], "log_events":[...],
//  "glaze_cards":[...], "photo_measures":[...], "ring_radii":[...], "sags_seen":[...], "photos":[...],
//  "readings":[...]}, its keys those of the records in core/firing and core/glaze with the unit in the name;
// times ISO 8601 UTC to the millisecond, ids those of the book it came from, the plan as in a plan file,
// pictures in base64 (RFC 4648), what is not known null. Version 1 lacks what stands between filed_offsets
// and readings. Service and checklist are the kiln's and the book's, no firing's: they are not in it.
#pragma once

#include "core/base/result.h"
#include "core/firing/firing_record.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace ringhold {

/// The text of that file. A record whose plan passes check() and whose numbers are finite comes back from
/// parseFiring() the same, field by field and bit by bit, struck lines included.
std::string formatFiring(const FiringRecord& record);

/// The firing in that text. badInput names the file, and the line where the text is no JSON or else the field
/// ("looks[3].hour must be a number, not a text"); it is also an id that leads nowhere, or readings out of
/// time order. foreign when a newer Ringhold wrote it. Keys that are not known are passed over.
Result<FiringRecord> parseFiring(std::string_view json, const std::string& fileName);

/// The same in files; errors as readFile() and writeFile().
Result<FiringRecord> readFiring(const std::filesystem::path& path);
Status writeFiring(const std::filesystem::path& path, const FiringRecord& record);

} // namespace ringhold
