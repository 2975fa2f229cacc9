// The part of record_json.h that writes the ware, what came of it, and its glazes.
#include "core/book/record_text.h"
#include "core/exchange/base64.h"
#include "core/exchange/json_values.h"
#include "core/exchange/record_json.h"

namespace ringhold {

using Json = nlohmann::ordered_json;

namespace {

Json toJson(const HabitBand& habit) {
    return {{"low_C", habit.low.celsius()}, {"high_C", habit.high.celsius()}, {"word", habit.word}};
}

Json toJson(const OxidePercent& part) {
    return {{"oxide", part.oxide}, {"percent", part.percent}};
}

Json toJson(const RecipeLine& line);

template <class Record>
Json listOf(const Record& records) {
    Json list = Json::array();
    for (const auto& record : records)
        list.push_back(toJson(record));
    return list;
}

Json toJson(const RecipeLine& line) {
    return {{"material", line.material}, {"percent", line.percent},
            {"addition", line.addition}, {"batch_g", orNull(line.batch_g)},
            {"formula", line.formula},   {"analysis", listOf(line.analysis)}};
}

Json listOf(const std::set<WareFault>& faults) {
    Json list = Json::array();
    for (const auto fault : faults)
        list.push_back(bookText(fault));
    return list;
}

Json listOf(const std::array<PhotoPoint, 4>& ends) {
    Json list = Json::array();
    for (const auto& end : ends)
        list.push_back(Json{end.x, end.y});
    return list;
}

} // namespace

Json toJson(const Piece& piece) {
    return {{"id", numberOf(piece.id)},
            {"firing", numberOf(piece.firing)},
            {"name", piece.name},
            {"glaze", piece.glaze},
            {"shelf", piece.shelf},
            {"catcher", piece.catcher},
            {"sagger", piece.sagger},
            {"form", piece.form},
            {"clay", piece.clay},
            {"application_g_per_cm2", orNull(piece.application_g_per_cm2)},
            {"spot", orNull(piece.spot, [](const MapSpot& spot) { return toJson(spot); })}};
}

Json toJson(const Outcome& outcome) {
    return {{"piece", numberOf(outcome.piece)},
            {"crystals", orNull(outcome.crystals, [](Crystals c) { return bookText(c); })},
            {"largest_mm", orNull(outcome.largest_mm)},
            {"rings", orNull(outcome.rings)},
            {"faults", outcome.faults},
            {"grade", outcome.grade},
            {"note", outcome.note},
            {"typical_mm", orNull(outcome.typical_mm)},
            {"crystal_colour", outcome.crystalColour},
            {"crystal_picked", outcome.crystalPicked},
            {"ground_colour", outcome.groundColour},
            {"ground_picked", outcome.groundPicked},
            {"run_off", outcome.runOff},
            {"run_off_mm", orNull(outcome.runOff_mm)},
            {"catcher_clean", orNull(outcome.catcherClean)},
            {"known_faults", listOf(outcome.knownFaults)}};
}

Json toJson(const Photo& photo) {
    return {{"id", numberOf(photo.id)},
            {"piece", numberOf(photo.piece)},
            {"taken", orNull(photo.taken, stampOf)},
            {"width", photo.width},
            {"height", photo.height},
            {"caption", photo.caption},
            {"jpeg", base64From(photo.jpeg)}};
}

Json toJson(const PhotoMeasure& measure) {
    return {{"id", numberOf(measure.id)},
            {"photo", numberOf(measure.photo)},
            {"what", measure.what},
            {"known_mm", measure.known_mm},
            {"measured_mm", measure.measured_mm},
            {"error_mm", measure.error_mm},
            {"ends", orNull(measure.ends, [](const auto& ends) { return listOf(ends); })}};
}

Json toJson(const RingRadius& radius) {
    return {{"piece", numberOf(radius.piece)},
            {"ring", radius.ring},
            {"radius_mm", radius.radius_mm},
            {"sd_mm", radius.sd_mm}};
}

Json toJson(const SagSeen& answer) {
    return {{"piece", numberOf(answer.piece)},
            {"at", stampOf(answer.at)},
            {"seen", bookText(answer.seen)},
            {"radius_mm", orNull(answer.radius_mm)}};
}

Json toJson(const GlazeCard& card) {
    return {{"id", numberOf(card.id)},
            {"name", card.name},
            {"cone", card.cone},
            {"top_C", degreesOrNull(card.top)},
            {"running", card.running},
            {"grow_low_C", degreesOrNull(card.growLow)},
            {"grow_high_C", degreesOrNull(card.growHigh)},
            {"colour_temperatures", card.colourTemperatures},
            {"habits", listOf(card.habits)},
            {"application", card.application},
            {"recipe", listOf(card.recipe)},
            {"notes", card.notes}};
}

} // namespace ringhold
