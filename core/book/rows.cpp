#include "core/book/rows.h"

#include "core/book/record_text.h"
#include "core/plan/plan_file.h"

#include <stdexcept>

namespace ringhold::rows {

namespace {

using sql::flagIn;
using sql::idIn;
using sql::instantIn;
using sql::maybeDoubleIn;
using sql::maybeInstantIn;
using Row = SQLite::Statement;

SQLite::Column at(Row& row, int column) {
    return row.getColumn(column);
}

std::string textIn(Row& row, int column) {
    return at(row, column).getString();
}

template <class T>
T known(const std::optional<T>& value, const std::string& text) {
    if (!value)
        throw std::runtime_error("the book says \"" + text + "\", which stands for nothing known");
    return *value;
}

template <class Id>
std::optional<Id> maybeIdIn(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(idIn<Id>(column));
}

std::optional<Plan> planIn(Row& row, int column) {
    if (at(row, column).isNull())
        return std::nullopt;
    auto plan = parsePlan(textIn(row, column), "the plan in the book");
    if (!plan)
        throw std::runtime_error(plan.error().text());
    return std::move(*plan);
}

Kiln makeKiln(Row& row) {
    Kiln made;
    made.id = idIn<KilnId>(at(row, 0));
    made.name = textIn(row, 1);
    made.fuel = known(fuelOf(textIn(row, 2)), textIn(row, 2));
    made.volume_L = maybeDoubleIn(at(row, 3));
    if (const auto watts = maybeDoubleIn(at(row, 4)))
        made.ratedPower = Power{*watts};
    if (const auto volts = maybeDoubleIn(at(row, 5)))
        made.ratedVolts = Volts{*volts};
    made.pricePerKilowattHour = maybeDoubleIn(at(row, 6));
    made.note = textIn(row, 7);
    return made;
}

Probe makeProbe(Row& row) {
    return {idIn<ProbeId>(at(row, 0)),
            idIn<KilnId>(at(row, 1)),
            textIn(row, 2),
            known(thermocoupleTypeNamed(textIn(row, 3)), textIn(row, 3)),
            textIn(row, 4),
            maybeInstantIn(at(row, 5)),
            maybeInstantIn(at(row, 6))};
}

Firing makeFiring(Row& row) {
    return {idIn<FiringId>(at(row, 0)), idIn<KilnId>(at(row, 1)), textIn(row, 2), instantIn(at(row, 3)),
            maybeInstantIn(at(row, 4)), planIn(row, 5),           textIn(row, 6)};
}

Channel makeChannel(Row& row) {
    return {idIn<ChannelId>(at(row, 0)), idIn<FiringId>(at(row, 1)),
            known(quantityOf(textIn(row, 2)), textIn(row, 2)), textIn(row, 3),
            maybeIdIn<ProbeId>(at(row, 4))};
}

Reading makeReading(Row& row) {
    return {idIn<ChannelId>(at(row, 0)), instantIn(at(row, 1)), at(row, 2).getDouble(),
            flagIn(at(row, 3)) ? Origin::hand : Origin::instrument, flagIn(at(row, 4))};
}

Pack makePack(Row& row) {
    return {idIn<PackId>(at(row, 0)),
            idIn<FiringId>(at(row, 1)),
            textIn(row, 2),
            known(coneTypeNamed(textIn(row, 3)), textIn(row, 3)),
            {},
            flagIn(at(row, 4))};
}

Look makeLook(Row& row) {
    return {idIn<LookId>(at(row, 0)), idIn<PackId>(at(row, 1)), instantIn(at(row, 2)), textIn(row, 3),
            at(row, 4).getDouble(),   flagIn(at(row, 5)),       flagIn(at(row, 6))};
}

Setting makeSetting(Row& row) {
    return {idIn<SettingId>(at(row, 0)),
            idIn<FiringId>(at(row, 1)),
            instantIn(at(row, 2)),
            textIn(row, 3),
            textIn(row, 4),
            flagIn(at(row, 5))};
}

Note makeNote(Row& row) {
    return {idIn<NoteId>(at(row, 0)), idIn<FiringId>(at(row, 1)), instantIn(at(row, 2)), textIn(row, 3),
            flagIn(at(row, 4))};
}

Piece makePiece(Row& row) {
    return {
        idIn<PieceId>(at(row, 0)), idIn<FiringId>(at(row, 1)), textIn(row, 2), textIn(row, 3), textIn(row, 4),
        flagIn(at(row, 5)),        flagIn(at(row, 6))};
}

Outcome makeOutcome(Row& row) {
    Outcome made;
    made.piece = idIn<PieceId>(at(row, 0));
    if (!at(row, 1).isNull())
        made.crystals = known(crystalsOf(textIn(row, 1)), textIn(row, 1));
    made.largest_mm = maybeDoubleIn(at(row, 2));
    if (!at(row, 3).isNull())
        made.rings = at(row, 3).getInt();
    made.faults = textIn(row, 4);
    made.grade = textIn(row, 5);
    made.note = textIn(row, 6);
    return made;
}

FiledOffset makeFiledOffset(Row& row) {
    return {idIn<FiringId>(at(row, 0)),
            idIn<KilnId>(at(row, 1)),
            idIn<ProbeId>(at(row, 2)),
            textIn(row, 3),
            instantIn(at(row, 4)),
            TemperatureDifference::fromCelsius(at(row, 5).getDouble()),
            TemperatureDifference::fromCelsius(at(row, 6).getDouble())};
}

AlarmRecord makeAlarm(Row& row) {
    AlarmRecord made{idIn<AlarmId>(at(row, 0)),
                     idIn<FiringId>(at(row, 1)),
                     textIn(row, 2),
                     textIn(row, 3),
                     textIn(row, 4),
                     instantIn(at(row, 5)),
                     std::nullopt,
                     maybeInstantIn(at(row, 8))};
    if (const auto acknowledged = maybeInstantIn(at(row, 6)))
        made.acknowledged = Acknowledgement{*acknowledged, textIn(row, 7)};
    return made;
}

LogEvent makeEvent(Row& row) {
    return {maybeIdIn<FiringId>(at(row, 0)), instantIn(at(row, 1)), textIn(row, 2), textIn(row, 3)};
}

} // namespace

const Form<Kiln> kiln{"SELECT id, name, fuel, volume_L, rated_W, rated_V, price_per_kWh, note FROM kiln",
                      makeKiln};
const Form<Probe> probe{"SELECT id, kiln, label, type, position, fitted_ms, retired_ms FROM probe",
                        makeProbe};
const Form<Firing> firing{"SELECT id, kiln, title, began_ms, ended_ms, plan, model FROM firing", makeFiring};
const Form<Channel> channel{"SELECT id, firing, quantity, label, probe FROM channel", makeChannel};
const Form<Reading> reading{"SELECT channel, at_ms, value, by_hand, struck FROM reading", makeReading};
const Form<Pack> pack{"SELECT id, firing, place, cone_type, leans_left FROM pack", makePack};
const Form<Look> look{"SELECT id, pack, at_ms, cone, hour, cold, struck FROM look", makeLook};
const Form<Setting> setting{"SELECT id, firing, at_ms, what, value, struck FROM setting", makeSetting};
const Form<Note> note{"SELECT id, firing, at_ms, text, struck FROM note", makeNote};
const Form<Piece> piece{"SELECT id, firing, name, glaze, shelf, catcher, sagger FROM piece", makePiece};
const Form<Outcome> outcome{"SELECT piece, crystals, largest_mm, rings, faults, grade, note FROM outcome",
                            makeOutcome};
const Form<FiledOffset> filedOffset{
    "SELECT firing, kiln, probe, place, at_ms, mean_C, sd_C FROM filed_offset", makeFiledOffset};
const Form<AlarmRecord> alarm{"SELECT id, firing, level, cause, detail, first_ms, acknowledged_ms, "
                              "acknowledged_by, ended_ms FROM alarm",
                              makeAlarm};
const Form<LogEvent> event{"SELECT firing, at_ms, kind, detail FROM event", makeEvent};

} // namespace ringhold::rows
