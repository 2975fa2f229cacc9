// The part of record_json.h that writes the firing, its kiln and its log.
#include "core/book/record_text.h"
#include "core/exchange/json_values.h"
#include "core/exchange/record_json.h"
#include "core/plan/plan_file.h"

namespace ringhold {

using Json = nlohmann::ordered_json;

Json toJson(const Firing& firing) {
    return {{"id", numberOf(firing.id)},
            {"kiln", numberOf(firing.kiln)},
            {"title", firing.title},
            {"began", stampOf(firing.began)},
            {"ended", orNull(firing.ended, stampOf)},
            {"plan", orNull(firing.plan, [](const Plan& plan) { return Json::parse(formatPlan(plan)); })},
            {"model", firing.modelJson}};
}

Json toJson(const Kiln& kiln) {
    return {{"id", numberOf(kiln.id)},
            {"name", kiln.name},
            {"fuel", bookText(kiln.fuel)},
            {"volume_L", orNull(kiln.volume_L)},
            {"rated_W", orNull(kiln.ratedPower, [](Power p) { return p.watts; })},
            {"rated_V", orNull(kiln.ratedVolts, [](Volts v) { return v.volts; })},
            {"price_per_kWh", orNull(kiln.pricePerKilowattHour)},
            {"note", kiln.note},
            {"gas_price", orNull(kiln.gasPrice)}};
}

Json toJson(const Probe& probe) {
    return {{"id", numberOf(probe.id)},
            {"kiln", numberOf(probe.kiln)},
            {"label", probe.label},
            {"type", name(probe.type)},
            {"position", probe.position},
            {"fitted", orNull(probe.fitted, stampOf)},
            {"retired", orNull(probe.retired, stampOf)}};
}

Json toJson(const Channel& channel) {
    return {{"id", numberOf(channel.id)},
            {"firing", numberOf(channel.firing)},
            {"quantity", bookText(channel.quantity)},
            {"label", channel.label},
            {"probe", orNull(channel.probe, numberOf<ProbeId>)}};
}

Json toJson(const Reading& reading) {
    Json json{{"at", stampOf(reading.at)}, {"channel", numberOf(reading.channel)}, {"value", reading.value}};
    if (reading.origin == Origin::hand)
        json["by_hand"] = true;
    if (reading.struck)
        json["struck"] = true;
    return json;
}

Json toJson(const Pack& pack) {
    return {
        {"id", numberOf(pack.id)}, {"firing", numberOf(pack.firing)},
        {"place", pack.place},     {"type", name(pack.type)},
        {"cones", pack.cones},     {"leans_left", pack.leansLeft},
        {"shelf", pack.shelf},     {"spot", orNull(pack.spot, [](const MapSpot& s) { return toJson(s); })}};
}

Json toJson(const Look& look) {
    return {{"id", numberOf(look.id)}, {"pack", numberOf(look.pack)}, {"at", stampOf(look.at)},
            {"cone", look.cone},       {"hour", look.hour},           {"cold", look.cold},
            {"struck", look.struck}};
}

Json toJson(const Setting& setting) {
    return {{"id", numberOf(setting.id)}, {"firing", numberOf(setting.firing)},
            {"at", stampOf(setting.at)},  {"what", setting.what},
            {"value", setting.value},     {"struck", setting.struck}};
}

Json toJson(const Note& note) {
    return {{"id", numberOf(note.id)},
            {"firing", numberOf(note.firing)},
            {"at", stampOf(note.at)},
            {"text", note.text},
            {"struck", note.struck}};
}

Json toJson(const FiledOffset& offset) {
    return {{"firing", numberOf(offset.firing)}, {"kiln", numberOf(offset.kiln)},
            {"probe", numberOf(offset.probe)},   {"place", offset.place},
            {"at", stampOf(offset.at)},          {"mean_C", offset.mean.celsius()},
            {"sd_C", offset.sd.celsius()}};
}

Json toJson(const AlarmEvent& event) {
    return {{"firing", numberOf(event.firing)},
            {"at", stampOf(event.at)},
            {"cause", event.cause},
            {"change", bookText(event.change)},
            {"level", bookText(event.level)},
            {"words", event.words},
            {"who", event.who}};
}

Json toJson(const StepCorrection& correction) {
    return {{"id", numberOf(correction.id)},
            {"firing", numberOf(correction.firing)},
            {"at", stampOf(correction.at)},
            {"step", correction.step},
            {"struck", correction.struck}};
}

Json toJson(const MeterStand& stand) {
    return {{"id", numberOf(stand.id)}, {"firing", numberOf(stand.firing)}, {"at", stampOf(stand.at)},
            {"stand", stand.stand},     {"unit", bookText(stand.unit)},     {"struck", stand.struck}};
}

Json toJson(const LogEvent& event) {
    return {{"firing", orNull(event.firing, numberOf<FiringId>)},
            {"at", stampOf(event.at)},
            {"kind", event.kind},
            {"detail", event.detail}};
}

} // namespace ringhold
