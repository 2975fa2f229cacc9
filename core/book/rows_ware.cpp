// Rows about ware, glazes and the kiln's care.
#include "core/book/row_values.h"

#include <nlohmann/json.hpp>

namespace ringhold::rows {

namespace {

/// The text of a column as JSON; nothing when it is empty.
nlohmann::json jsonIn(Row& row, int column) {
    const std::string text = textIn(row, column);
    return text.empty() ? nlohmann::json::array() : nlohmann::json::parse(text);
}

ServiceEntry makeService(Row& row) {
    return {idIn<ServiceId>(at(row, 0)),
            idIn<KilnId>(at(row, 1)),
            maybeIdIn<ProbeId>(at(row, 2)),
            instantIn(at(row, 3)),
            wordIn(row, 4, fromBookText<ServiceKind>),
            textIn(row, 5)};
}

ChecklistItem makeChecklistItem(Row& row) {
    return {idIn<ChecklistItemId>(at(row, 0)), at(row, 1).getInt(), textIn(row, 2),
            wordIn(row, 3, fromBookText<ChecklistKind>)};
}

GlazeCard makeGlazeCard(Row& row) {
    GlazeCard made;
    made.id = idIn<GlazeCardId>(at(row, 0));
    made.name = textIn(row, 1);
    made.cone = textIn(row, 2);
    made.top = maybeCelsiusIn(row, 3);
    made.running = textIn(row, 4);
    made.growLow = maybeCelsiusIn(row, 5);
    made.growHigh = maybeCelsiusIn(row, 6);
    made.colourTemperatures = textIn(row, 7);
    made.application = textIn(row, 8);
    made.notes = textIn(row, 9);
    return made;
}

HabitBand makeHabit(Row& row) {
    return {Temperature::fromCelsius(at(row, 0).getDouble()),
            Temperature::fromCelsius(at(row, 1).getDouble()), textIn(row, 2)};
}

RecipeLine makeRecipeLine(Row& row) {
    RecipeLine made{textIn(row, 0),     at(row, 1).getDouble(),
                    flagIn(at(row, 2)), maybeDoubleIn(at(row, 3)),
                    textIn(row, 4),     {}};
    for (const auto& part : jsonIn(row, 5))
        made.analysis.push_back({part.at(0).get<std::string>(), part.at(1).get<double>()});
    return made;
}

Photo makePhoto(Row& row) {
    return {idIn<PhotoId>(at(row, 0)),
            idIn<PieceId>(at(row, 1)),
            maybeInstantIn(at(row, 2)),
            at(row, 3).getInt(),
            at(row, 4).getInt(),
            textIn(row, 5),
            ""};
}

Photo makePhotoWithPicture(Row& row) {
    Photo made = makePhoto(row);
    made.jpeg = textIn(row, 6);
    return made;
}

PhotoMeasure makePhotoMeasure(Row& row) {
    PhotoMeasure made{
        idIn<PhotoMeasureId>(at(row, 0)), idIn<PhotoId>(at(row, 1)), textIn(row, 2), at(row, 3).getDouble(),
        at(row, 4).getDouble(),           at(row, 5).getDouble(),    std::nullopt};
    const auto ends = jsonIn(row, 6);
    if (ends.size() != 4)
        return made;
    made.ends.emplace();
    for (std::size_t i = 0; i < 4; ++i)
        (*made.ends)[i] = {ends[i].at(0).get<double>(), ends[i].at(1).get<double>()};
    return made;
}

RingRadius makeRingRadius(Row& row) {
    return {idIn<PieceId>(at(row, 0)), at(row, 1).getInt(), at(row, 2).getDouble(), at(row, 3).getDouble()};
}

SagSeen makeSagSeen(Row& row) {
    return {idIn<PieceId>(at(row, 0)), instantIn(at(row, 1)), wordIn(row, 2, fromBookText<SagSight>),
            maybeDoubleIn(at(row, 3))};
}

} // namespace

const Form<ServiceEntry> service{"SELECT id, kiln, probe, at_ms, kind, words FROM service", makeService};
const Form<ChecklistItem> checklistItem{"SELECT id, position, words, kind FROM checklist_item",
                                        makeChecklistItem};
const Form<GlazeCard> glazeCard{"SELECT id, name, cone, top_C, running, grow_low_C, grow_high_C, "
                                "colour_temperatures, application, notes FROM glaze_card",
                                makeGlazeCard};
const Form<HabitBand> habit{"SELECT low_C, high_C, word FROM glaze_habit", makeHabit};
const Form<RecipeLine> recipeLine{
    "SELECT material, percent, addition, batch_g, formula, analysis FROM recipe_line", makeRecipeLine};
const Form<Photo> photo{"SELECT id, piece, taken_ms, width, height, caption FROM photo", makePhoto};
const Form<Photo> photoWithPicture{"SELECT id, piece, taken_ms, width, height, caption, jpeg FROM photo",
                                   makePhotoWithPicture};
const Form<PhotoMeasure> photoMeasure{
    "SELECT id, photo, what, known_mm, measured_mm, error_mm, ends FROM photo_measure", makePhotoMeasure};
const Form<RingRadius> ringRadius{"SELECT piece, ring, radius_mm, sd_mm FROM ring_radius", makeRingRadius};
const Form<SagSeen> sagSeen{"SELECT piece, at_ms, seen, radius_mm FROM sag_seen", makeSagSeen};

} // namespace ringhold::rows
