#include "core/report/log_line.h"

#include "core/watch/alarm_cause.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr Duration oneVisit = std::chrono::seconds(90);

bool sameVisit(const LogLine& line, const Look& look, const std::string& place) {
    const auto* seen = std::get_if<LookLine>(&line.what);
    return seen && line.struck == look.struck && seen->cold == look.cold && seen->place == place &&
           look.at - line.at <= oneVisit &&
           std::ranges::find(seen->cones, look.cone, &ConeHour::cone) == seen->cones.end();
}

void addLooks(std::vector<LogLine>& lines, const FiringRecord& record) {
    std::vector<LogLine> visits;
    for (const auto& look : record.looks) {
        const auto pack = std::ranges::find(record.packs, look.pack, &Pack::id);
        const std::string place = pack == record.packs.end() ? std::string() : pack->place;
        const auto visit = std::find_if(visits.rbegin(), visits.rend(),
                                        [&](const LogLine& line) { return sameVisit(line, look, place); });
        if (visit != visits.rend()) {
            std::get<LookLine>(visit->what).cones.push_back({look.cone, look.hour});
            visit->keys.emplace_back(look.id);
        } else {
            visits.push_back({look.at,
                              look.struck,
                              LookLine{place, record.packs.size() > 1, {{look.cone, look.hour}}, look.cold},
                              {look.id}});
        }
    }
    std::ranges::move(visits, std::back_inserter(lines));
}

std::string probeLabel(const FiringRecord& record, const Channel& channel) {
    const auto probe =
        std::ranges::find_if(record.probes, [&](const Probe& p) { return channel.probe == p.id; });
    return record.probes.size() > 1 && probe != record.probes.end() ? probe->label : std::string();
}

void addHandReadings(std::vector<LogLine>& lines, const FiringRecord& record) {
    for (const auto& reading : record.readings) {
        const auto channel = std::ranges::find(record.channels, reading.channel, &Channel::id);
        if (reading.origin == Origin::hand && channel != record.channels.end())
            lines.push_back({reading.at,
                             reading.struck,
                             HandReadingLine{channel->quantity, reading.value, probeLabel(record, *channel)},
                             {ReadingKey{reading.channel, reading.at}}});
    }
}

void addAlarms(std::vector<LogLine>& lines, const std::vector<AlarmRecord>& alarms) {
    for (const auto& alarm : alarms)
        lines.push_back({alarm.first, false,
                         AlarmLine{alarm.level, alarm.cause, alarm.detail, alarm.acknowledged, alarm.ended}});
}

void addSteps(std::vector<LogLine>& lines, const FiringRecord& record) {
    const std::size_t of = record.firing.plan ? record.firing.plan->steps.size() : 0;
    for (const auto& correction : record.stepCorrections)
        lines.push_back({correction.at, correction.struck, StepLine{correction.step, of}, {correction.id}});
}

void addMeters(std::vector<LogLine>& lines, const FiringRecord& record) {
    for (const auto& stand : record.meterStands)
        lines.push_back({stand.at, stand.struck, MeterLine{stand.stand, stand.unit}, {stand.id}});
}

void addEvents(std::vector<LogLine>& lines, const std::vector<LogEvent>& events) {
    for (const auto& event : events)
        if (event.kind != "struck" && event.kind != "restored" && event.kind != "corrected")
            lines.push_back({event.at, false, EventLine{event.kind, event.detail}});
}

std::string quantityWords(const HandReadingLine& line, const WordStyle& style) {
    switch (line.quantity) {
    case Quantity::temperature:
        return temperatureWords(Temperature::fromCelsius(line.value), style);
    case Quantity::lineVolts:
        return voltsWords({line.value});
    case Quantity::lineAmps:
        return figure(line.value, 1) + " A";
    case Quantity::oxygenMillivolts:
        return figure(line.value, 0) + " mV from the oxygen probe";
    case Quantity::duty:
        return percentWords(line.value, 0) + " of full power";
    }
    return {};
}

/// Blanks instead of line breaks and other control characters: a line of the log is one paragraph.
std::string onOneLine(std::string text) {
    std::ranges::replace_if(
        text, [](unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
    return text;
}

struct Speaker {
    const WordStyle& style;
    bool kind; ///< tells what kind of line it is

    std::string operator()(const LookLine& look) const {
        const std::string place = look.nameThePlace && !look.place.empty() ? look.place + ": " : "";
        return (look.cold ? "Cold pack · " : kind ? "Look · " : "") + place + lookWords(look.cones);
    }
    std::string operator()(const NoteLine& note) const { return note.text; }
    std::string operator()(const SettingLine& setting) const { return setting.what + " " + setting.value; }
    std::string operator()(const HandReadingLine& reading) const {
        const std::string label = reading.label.empty() ? "" : reading.label + " ";
        return label + quantityWords(reading, style) + ", by hand";
    }
    std::string operator()(const AlarmLine& alarm) const {
        std::string text = (kind ? "Alarm · " : "") + alarmTitle(alarm);
        if (text.ends_with('?') && !alarm.detail.empty())
            text += " " + alarm.detail;
        else if (!alarm.detail.empty())
            text += ": " + alarm.detail;
        if (!text.ends_with('.') && !text.ends_with('?'))
            text += ".";
        if (alarm.ended)
            text += " Over at " + clockWords(*alarm.ended, style) + ".";
        if (!alarm.acknowledged)
            return text + " Not acknowledged.";
        text += " Acknowledged " + clockWords(alarm.acknowledged->at, style);
        return text + (alarm.acknowledged->by.empty() ? "" : " by " + alarm.acknowledged->by) + ".";
    }
    std::string operator()(const StepLine& step) const {
        const std::string head = kind ? "Step by hand · " : "";
        if (step.step >= step.of)
            return head + "the plan is done";
        return head + "the kiln is in step " + std::to_string(step.step + 1) + " of " +
               std::to_string(step.of);
    }
    std::string operator()(const MeterLine& meter) const {
        return std::string(kind ? "Meter · " : "meter at ") + figure(meter.stand, 1) +
               (meter.unit == MeterUnit::kilowattHours ? " kWh" : " m³");
    }
    std::string operator()(const EventLine& event) const {
        if (event.detail.empty())
            return event.kind;
        return kind || event.kind != "forecast" ? event.kind + ": " + event.detail : event.detail;
    }
};

} // namespace

std::vector<LogLine> logLines(const FiringRecord& record, const std::vector<AlarmRecord>& alarms,
                              const std::vector<LogEvent>& events) {
    std::vector<LogLine> lines;
    addLooks(lines, record);
    addHandReadings(lines, record);
    for (const auto& setting : record.settings)
        lines.push_back({setting.at, setting.struck, SettingLine{setting.what, setting.value}, {setting.id}});
    for (const auto& note : record.notes)
        lines.push_back({note.at, note.struck, NoteLine{note.text}, {note.id}});
    addAlarms(lines, alarms);
    addSteps(lines, record);
    addMeters(lines, record);
    addEvents(lines, events);
    std::ranges::stable_sort(lines, {}, &LogLine::at);
    return lines;
}

std::string alarmTitle(const AlarmLine& alarm) {
    const auto cause = causeOfWord(alarm.cause);
    return cause ? std::string(causeTitle(*cause)) : alarm.cause;
}

std::string lineWords(const LogLine& line, const WordStyle& style) {
    return onOneLine(std::visit(Speaker{style, true}, line.what));
}

std::string lineWordsWithoutKind(const LogLine& line, const WordStyle& style) {
    return onOneLine(std::visit(Speaker{style, false}, line.what));
}

} // namespace ringhold
