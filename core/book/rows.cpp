#include "core/book/rows.h"

#include "core/book/row_values.h"
#include "core/plan/plan_file.h"

namespace ringhold::rows {

namespace {

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
    made.fuel = known(fromBookText<Fuel>(textIn(row, 2)), textIn(row, 2));
    made.volume_L = maybeDoubleIn(at(row, 3));
    if (const auto watts = maybeDoubleIn(at(row, 4)))
        made.ratedPower = Power{*watts};
    if (const auto volts = maybeDoubleIn(at(row, 5)))
        made.ratedVolts = Volts{*volts};
    made.pricePerKilowattHour = maybeDoubleIn(at(row, 6));
    made.note = textIn(row, 7);
    made.gasPrice = maybeDoubleIn(at(row, 8));
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
            known(fromBookText<Quantity>(textIn(row, 2)), textIn(row, 2)), textIn(row, 3),
            maybeIdIn<ProbeId>(at(row, 4))};
}

Pack makePack(Row& row) {
    return {idIn<PackId>(at(row, 0)),
            idIn<FiringId>(at(row, 1)),
            textIn(row, 2),
            known(coneTypeNamed(textIn(row, 3)), textIn(row, 3)),
            {},
            flagIn(at(row, 4)),
            textIn(row, 5),
            spotIn(row, 6)};
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
    return {idIn<PieceId>(at(row, 0)),
            idIn<FiringId>(at(row, 1)),
            textIn(row, 2),
            textIn(row, 3),
            textIn(row, 4),
            flagIn(at(row, 5)),
            flagIn(at(row, 6)),
            textIn(row, 7),
            textIn(row, 8),
            maybeDoubleIn(at(row, 9)),
            spotIn(row, 10)};
}

Outcome makeOutcome(Row& row) {
    Outcome made;
    made.piece = idIn<PieceId>(at(row, 0));
    if (!at(row, 1).isNull())
        made.crystals = known(fromBookText<Crystals>(textIn(row, 1)), textIn(row, 1));
    made.largest_mm = maybeDoubleIn(at(row, 2));
    if (!at(row, 3).isNull())
        made.rings = at(row, 3).getInt();
    made.faults = textIn(row, 4);
    made.grade = textIn(row, 5);
    made.note = textIn(row, 6);
    made.typical_mm = maybeDoubleIn(at(row, 7));
    made.crystalColour = textIn(row, 8);
    made.crystalPicked = textIn(row, 9);
    made.groundColour = textIn(row, 10);
    made.groundPicked = textIn(row, 11);
    made.runOff = textIn(row, 12);
    made.runOff_mm = maybeDoubleIn(at(row, 13));
    if (!at(row, 14).isNull())
        made.catcherClean = flagIn(at(row, 14));
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

AlarmEvent makeAlarmEvent(Row& row) {
    return {idIn<FiringId>(at(row, 0)),
            instantIn(at(row, 1)),
            textIn(row, 2),
            wordIn(row, 3, fromBookText<AlarmChange>),
            wordIn(row, 4, fromBookText<AlarmLevel>),
            textIn(row, 5),
            textIn(row, 6)};
}

StepCorrection makeStepCorrection(Row& row) {
    return {idIn<FiringId>(at(row, 1)), instantIn(at(row, 2)),
            static_cast<std::size_t>(at(row, 3).getInt64()), flagIn(at(row, 4)),
            idIn<StepCorrectionId>(at(row, 0))};
}

MeterStand makeMeterStand(Row& row) {
    return {idIn<MeterStandId>(at(row, 0)),
            idIn<FiringId>(at(row, 1)),
            instantIn(at(row, 2)),
            at(row, 3).getDouble(),
            wordIn(row, 4, fromBookText<MeterUnit>),
            flagIn(at(row, 5))};
}

LogEvent makeEvent(Row& row) {
    return {maybeIdIn<FiringId>(at(row, 0)), instantIn(at(row, 1)), textIn(row, 2), textIn(row, 3)};
}

} // namespace

const Form<Kiln> kiln{"SELECT id, name, fuel, volume_L, rated_W, rated_V, price_per_kWh, note, gas_price "
                      "FROM kiln",
                      makeKiln};
const Form<Probe> probe{"SELECT id, kiln, label, type, position, fitted_ms, retired_ms FROM probe",
                        makeProbe};
const Form<Firing> firing{"SELECT id, kiln, title, began_ms, ended_ms, plan, model FROM firing", makeFiring};
const Form<Channel> channel{"SELECT id, firing, quantity, label, probe FROM channel", makeChannel};
const Form<Pack> pack{"SELECT id, firing, place, cone_type, leans_left, shelf, spot_x, spot_y FROM pack",
                      makePack};
const Form<Look> look{"SELECT id, pack, at_ms, cone, hour, cold, struck FROM look", makeLook};
const Form<Setting> setting{"SELECT id, firing, at_ms, what, value, struck FROM setting", makeSetting};
const Form<Note> note{"SELECT id, firing, at_ms, text, struck FROM note", makeNote};
const Form<Piece> piece{"SELECT id, firing, name, glaze, shelf, catcher, sagger, form, clay, "
                        "application_g_per_cm2, spot_x, spot_y FROM piece",
                        makePiece};
const Form<Outcome> outcome{"SELECT piece, crystals, largest_mm, rings, faults, grade, note, typical_mm, "
                            "crystal_colour, crystal_picked, ground_colour, ground_picked, run_off, "
                            "run_off_mm, catcher_clean FROM outcome",
                            makeOutcome};
const Form<FiledOffset> filedOffset{
    "SELECT firing, kiln, probe, place, at_ms, mean_C, sd_C FROM filed_offset", makeFiledOffset};
const Form<AlarmEvent> alarmEvent{"SELECT firing, at_ms, cause, change, level, words, who FROM alarm_event",
                                  makeAlarmEvent};
const Form<StepCorrection> stepCorrection{"SELECT id, firing, at_ms, step, struck FROM step_correction",
                                          makeStepCorrection};
const Form<MeterStand> meterStand{"SELECT id, firing, at_ms, stand, unit, struck FROM meter_stand",
                                  makeMeterStand};
const Form<LogEvent> event{"SELECT firing, at_ms, kind, detail FROM event", makeEvent};

} // namespace ringhold::rows
