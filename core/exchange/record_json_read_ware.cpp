// The part of record_json.h that takes in the ware, what came of it, and its glazes.
#include "core/book/record_text.h"
#include "core/exchange/base64.h"
#include "core/exchange/json_values.h"
#include "core/exchange/record_json.h"

namespace ringhold {

using nlohmann::json;

namespace {

/// Each object of a list, made by the call.
template <class Make>
auto partsIn(const JsonFields& fields, const char* key, const Make& make) {
    const json& list = fields.list(key);
    std::vector<std::invoke_result_t<Make, const JsonFields&>> parts;
    for (std::size_t i = 0; i < list.size(); ++i)
        parts.push_back(make(JsonFields(list[i], fields.pathOf(key) + "[" + std::to_string(i) + "]")));
    return parts;
}

HabitBand habitIn(const JsonFields& fields) {
    return {Temperature::fromCelsius(fields.number("low_C")),
            Temperature::fromCelsius(fields.number("high_C")), fields.text("word")};
}

OxidePercent oxideIn(const JsonFields& fields) {
    return {fields.text("oxide"), fields.number("percent")};
}

RecipeLine recipeLineIn(const JsonFields& fields) {
    return {fields.text("material"),       fields.number("percent"), isSet(fields, "addition"),
            fields.maybeNumber("batch_g"), fields.text("formula"),   partsIn(fields, "analysis", oxideIn)};
}

std::set<WareFault> faultsIn(const JsonFields& fields, const char* key) {
    std::set<WareFault> faults;
    for (const json& word : fields.list(key)) {
        const auto fault = word.is_string() ? fromBookText<WareFault>(word.get<std::string>()) : std::nullopt;
        if (!fault)
            refuseJson(fields.pathOf(key) + " has " + word.dump(-1, ' ', true) + ", which is no known fault");
        faults.insert(*fault);
    }
    return faults;
}

std::array<PhotoPoint, 4> endsIn(const JsonFields& fields, const char* key) {
    const json& list = fields.list(key);
    std::array<PhotoPoint, 4> ends;
    if (list.size() != ends.size())
        refuseJson(fields.pathOf(key) + " must have four points");
    for (std::size_t i = 0; i < ends.size(); ++i) {
        const auto [x, y] = pairIn(list[i], fields.pathOf(key) + "[" + std::to_string(i) + "]");
        ends[i] = {x, y};
    }
    return ends;
}

int pixelsIn(const JsonFields& fields, const char* key) {
    const int pixels = countIn(fields, key, "number of pixels");
    if (pixels == 0)
        refuseJson(fields.pathOf(key) + " is no number of pixels");
    return pixels;
}

} // namespace

void fillFrom(const JsonFields& fields, Piece& piece) {
    piece.id = idIn<PieceId>(fields, "id");
    piece.firing = idIn<FiringId>(fields, "firing");
    piece.name = fields.text("name");
    piece.glaze = fields.text("glaze");
    piece.shelf = fields.text("shelf");
    piece.catcher = isSet(fields, "catcher");
    piece.sagger = isSet(fields, "sagger");
    piece.form = textOrNothing(fields, "form");
    piece.clay = textOrNothing(fields, "clay");
    piece.application_g_per_cm2 = fields.maybeNumber("application_g_per_cm2");
    piece.spot = maybeSpot(fields, "spot");
}

void fillFrom(const JsonFields& fields, Outcome& outcome) {
    outcome.piece = idIn<PieceId>(fields, "piece");
    if (fields.has("crystals"))
        outcome.crystals = wordIn(fields, "crystals", fromBookText<Crystals>);
    outcome.largest_mm = fields.maybeNumber("largest_mm");
    outcome.rings = maybeCount(fields, "rings", "count of rings");
    outcome.faults = fields.text("faults");
    outcome.grade = fields.text("grade");
    outcome.note = fields.text("note");
    outcome.typical_mm = fields.maybeNumber("typical_mm");
    outcome.crystalColour = textOrNothing(fields, "crystal_colour");
    outcome.crystalPicked = textOrNothing(fields, "crystal_picked");
    outcome.groundColour = textOrNothing(fields, "ground_colour");
    outcome.groundPicked = textOrNothing(fields, "ground_picked");
    outcome.runOff = textOrNothing(fields, "run_off");
    outcome.runOff_mm = fields.maybeNumber("run_off_mm");
    outcome.catcherClean = fields.maybeTruth("catcher_clean");
    if (fields.has("known_faults"))
        outcome.knownFaults = faultsIn(fields, "known_faults");
}

void fillFrom(const JsonFields& fields, Photo& photo) {
    photo.id = idIn<PhotoId>(fields, "id");
    photo.piece = idIn<PieceId>(fields, "piece");
    photo.taken = fields.maybeInstant("taken");
    photo.width = pixelsIn(fields, "width");
    photo.height = pixelsIn(fields, "height");
    photo.caption = fields.text("caption");
    auto jpeg = bytesFromBase64(fields.text("jpeg"));
    if (!jpeg)
        refuseJson(fields.pathOf("jpeg") + " is no picture in base64");
    photo.jpeg = std::move(*jpeg);
}

void fillFrom(const JsonFields& fields, PhotoMeasure& measure) {
    measure.id = idIn<PhotoMeasureId>(fields, "id");
    measure.photo = idIn<PhotoId>(fields, "photo");
    measure.what = fields.text("what");
    measure.known_mm = fields.number("known_mm");
    measure.measured_mm = fields.number("measured_mm");
    measure.error_mm = fields.number("error_mm");
    if (fields.has("ends"))
        measure.ends = endsIn(fields, "ends");
}

void fillFrom(const JsonFields& fields, RingRadius& radius) {
    radius.piece = idIn<PieceId>(fields, "piece");
    radius.ring = countIn(fields, "ring", "number of a ring");
    radius.radius_mm = fields.number("radius_mm");
    radius.sd_mm = fields.number("sd_mm");
}

void fillFrom(const JsonFields& fields, SagSeen& answer) {
    answer.piece = idIn<PieceId>(fields, "piece");
    answer.at = fields.instant("at");
    answer.seen = wordIn(fields, "seen", fromBookText<SagSight>);
    answer.radius_mm = fields.maybeNumber("radius_mm");
}

void fillFrom(const JsonFields& fields, GlazeCard& card) {
    card.id = idIn<GlazeCardId>(fields, "id");
    card.name = fields.text("name");
    card.cone = fields.text("cone");
    card.top = maybeDegrees(fields, "top_C");
    card.running = fields.text("running");
    card.growLow = maybeDegrees(fields, "grow_low_C");
    card.growHigh = maybeDegrees(fields, "grow_high_C");
    card.colourTemperatures = fields.text("colour_temperatures");
    card.habits = partsIn(fields, "habits", habitIn);
    card.application = fields.text("application");
    card.recipe = partsIn(fields, "recipe", recipeLineIn);
    card.notes = fields.text("notes");
}

} // namespace ringhold
