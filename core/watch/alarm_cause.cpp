#include "core/watch/alarm_cause.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

struct Named {
    AlarmCause cause;
    std::string_view word;
    std::string_view title;
};

using enum AlarmCause;

constexpr std::array named{
    Named{relayStuck, "relay-stuck", "Relay stuck on?"},
    Named{aboveCeiling, "above-ceiling", "Hotter than the plan goes"},
    Named{coneUnseen, "cone-unseen", "Cone likely down, not seen"},
    Named{probeOpen, "probe-open", "Probe open"},
    Named{probeReversed, "probe-reversed", "Probe wired the wrong way round?"},
    Named{powerOff, "power-off", "Power off?"},
    Named{doorOpen, "door-open", "Door or damper open?"},
    Named{readingsStopped, "readings-stopped", "Readings have stopped"},
    Named{frozen, "frozen", "Reading frozen?"},
    Named{instrumentLost, "instrument-lost", "Instrument lost"},
    Named{diskFailing, "disk-failing", "Readings not reaching the disk"},
    Named{sag, "sag", "Mains sagging?"},
    Named{ceiling, "ceiling", "Kiln at its limit?"},
    Named{wrongStep, "wrong-step", "Controller in another step?"},
    Named{noisy, "noisy", "Readings noisy"},
    Named{probeLow, "probe-low", "Probe reading low?"},
    Named{bandLeft, "band-left", "Outside the hold's band"},
    Named{drifting, "drifting", "Drifting in the hold"},
    Named{reducing, "reducing", "Reducing while zinc can be lost"},
    Named{coneDue, "cone-due", "Cone due soon"},
    Named{attendance, "attendance", "Nobody at the kiln"},
};

const Named& of(AlarmCause cause) {
    return *std::ranges::find(named, cause, &Named::cause);
}

} // namespace

const std::vector<AlarmCause>& allAlarmCauses() {
    static const std::vector<AlarmCause> all = [] {
        std::vector<AlarmCause> causes;
        for (const auto& n : named)
            causes.push_back(n.cause);
        return causes;
    }();
    return all;
}

std::string_view causeWord(AlarmCause cause) {
    return of(cause).word;
}

std::optional<AlarmCause> causeOfWord(std::string_view word) {
    const auto found = std::ranges::find(named, word, &Named::word);
    return found == named.end() ? std::nullopt : std::optional(found->cause);
}

std::string_view causeTitle(AlarmCause cause) {
    return of(cause).title;
}

bool quietOnceAcknowledged(AlarmCause cause) {
    return cause != coneUnseen;
}

} // namespace ringhold
