// The part of record_json.h that takes in the firing, its kiln and its log.
#include "core/book/record_text.h"
#include "core/exchange/json_values.h"
#include "core/exchange/record_json.h"
#include "core/plan/plan_file.h"

namespace ringhold {

using nlohmann::json;

namespace {

/// What all lines of a firing's log have.
template <class Line>
void fillLine(const JsonFields& fields, Line& line) {
    line.id = idIn<decltype(line.id)>(fields, "id");
    line.firing = idIn<FiringId>(fields, "firing");
    line.at = fields.instant("at");
    line.struck = isSet(fields, "struck");
}

} // namespace

void fillFrom(const JsonFields& fields, Firing& firing) {
    firing.id = idIn<FiringId>(fields, "id");
    firing.kiln = idIn<KilnId>(fields, "kiln");
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

void fillFrom(const JsonFields& fields, Kiln& kiln) {
    kiln.id = idIn<KilnId>(fields, "id");
    kiln.name = fields.text("name");
    kiln.fuel = wordIn(fields, "fuel", fromBookText<Fuel>);
    kiln.volume_L = fields.maybeNumber("volume_L");
    if (const auto watts = fields.maybeNumber("rated_W"))
        kiln.ratedPower = Power{*watts};
    if (const auto volts = fields.maybeNumber("rated_V"))
        kiln.ratedVolts = Volts{*volts};
    kiln.pricePerKilowattHour = fields.maybeNumber("price_per_kWh");
    kiln.note = fields.text("note");
    kiln.gasPrice = fields.maybeNumber("gas_price");
}

void fillFrom(const JsonFields& fields, Probe& probe) {
    probe.id = idIn<ProbeId>(fields, "id");
    probe.kiln = idIn<KilnId>(fields, "kiln");
    probe.label = fields.text("label");
    probe.type = wordIn(fields, "type", thermocoupleTypeNamed);
    probe.position = fields.text("position");
    probe.fitted = fields.maybeInstant("fitted");
    probe.retired = fields.maybeInstant("retired");
}

void fillFrom(const JsonFields& fields, Channel& channel) {
    channel.id = idIn<ChannelId>(fields, "id");
    channel.firing = idIn<FiringId>(fields, "firing");
    channel.quantity = wordIn(fields, "quantity", fromBookText<Quantity>);
    channel.label = fields.text("label");
    if (const auto probe = fields.maybeInteger("probe"))
        channel.probe = ProbeId{*probe};
}

void fillFrom(const JsonFields& fields, Reading& reading) {
    reading.at = fields.instant("at");
    reading.channel = idIn<ChannelId>(fields, "channel");
    reading.value = fields.number("value");
    reading.origin = isSet(fields, "by_hand") ? Origin::hand : Origin::instrument;
    reading.struck = isSet(fields, "struck");
}

void fillFrom(const JsonFields& fields, Pack& pack) {
    pack.id = idIn<PackId>(fields, "id");
    pack.firing = idIn<FiringId>(fields, "firing");
    pack.place = fields.text("place");
    pack.type = wordIn(fields, "type", coneTypeNamed);
    for (const json& cone : fields.list("cones")) {
        if (!cone.is_string())
            refuseJson(fields.pathOf("cones") + " must be a list of texts");
        pack.cones.push_back(cone.get<std::string>());
    }
    pack.leansLeft = isSet(fields, "leans_left");
    pack.shelf = textOrNothing(fields, "shelf");
    pack.spot = maybeSpot(fields, "spot");
}

void fillFrom(const JsonFields& fields, Look& look) {
    look.id = idIn<LookId>(fields, "id");
    look.pack = idIn<PackId>(fields, "pack");
    look.at = fields.instant("at");
    look.cone = fields.text("cone");
    look.hour = fields.number("hour");
    if (look.hour < 0 || look.hour > 6)
        refuseJson(fields.pathOf("hour") + " must be 0 (standing) to 6 (down)");
    look.cold = isSet(fields, "cold");
    look.struck = isSet(fields, "struck");
}

void fillFrom(const JsonFields& fields, Setting& setting) {
    fillLine(fields, setting);
    setting.what = fields.text("what");
    setting.value = fields.text("value");
}

void fillFrom(const JsonFields& fields, Note& note) {
    fillLine(fields, note);
    note.text = fields.text("text");
}

void fillFrom(const JsonFields& fields, FiledOffset& offset) {
    offset.firing = idIn<FiringId>(fields, "firing");
    offset.kiln = idIn<KilnId>(fields, "kiln");
    offset.probe = idIn<ProbeId>(fields, "probe");
    offset.place = fields.text("place");
    offset.at = fields.instant("at");
    offset.mean = TemperatureDifference::fromCelsius(fields.number("mean_C"));
    offset.sd = TemperatureDifference::fromCelsius(fields.number("sd_C"));
}

void fillFrom(const JsonFields& fields, AlarmEvent& event) {
    event.firing = idIn<FiringId>(fields, "firing");
    event.at = fields.instant("at");
    event.cause = fields.text("cause");
    event.change = wordIn(fields, "change", fromBookText<AlarmChange>);
    event.level = wordIn(fields, "level", fromBookText<AlarmLevel>);
    event.words = fields.text("words");
    event.who = fields.text("who");
}

void fillFrom(const JsonFields& fields, StepCorrection& correction) {
    fillLine(fields, correction);
    correction.step = static_cast<std::size_t>(countIn(fields, "step", "number of a step"));
}

void fillFrom(const JsonFields& fields, MeterStand& stand) {
    fillLine(fields, stand);
    stand.stand = fields.number("stand");
    stand.unit = wordIn(fields, "unit", fromBookText<MeterUnit>);
}

void fillFrom(const JsonFields& fields, LogEvent& event) {
    if (const auto firing = fields.maybeInteger("firing"))
        event.firing = FiringId{*firing};
    event.at = fields.instant("at");
    event.kind = fields.text("kind");
    event.detail = fields.text("detail");
}

} // namespace ringhold
