// What an alarm can be about.
#pragma once

#include "core/firing/alarm_event.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

enum class AlarmCause {
    bandLeft,        ///< the hold's band was left for longer than the confirm time
    drifting,        ///< within the band, but going out of it or sitting off its middle
    relayStuck,      ///< still climbing after the hold began
    aboveCeiling,    ///< above the plan's ceiling, or hotter than the plan ever goes
    sag,             ///< line volts down, or the climb slow as with less power
    powerOff,        ///< no volts, no amps
    ceiling,         ///< the kiln can give no more
    doorOpen,        ///< door, lid or damper: a fast drop
    wrongStep,       ///< the controller does another step than the plan
    readingsStopped, ///< nothing for twice the sample period
    frozen,          ///< the same value again and again
    noisy,           ///< readings scatter as they did not before
    probeOpen,       ///< the instrument has no value: a broken thermocouple or wire
    probeReversed,   ///< it falls as the kiln heats
    probeLow,        ///< the control probe reads lower and lower against its witnesses
    coneDue,         ///< the firing cone goes down soon
    coneUnseen,      ///< it is down more likely than not, and nobody has looked
    attendance,      ///< nobody has been at the kiln for the potter's interval
    instrumentLost,  ///< the instrument is not there
    diskFailing,     ///< readings do not get to the disk
    reducing,        ///< a reducing atmosphere while zinc can be lost
};

/// All of them, the most telling first: of two causes at one time the first is shown first.
const std::vector<AlarmCause>& allAlarmCauses();

/// The word by which the book and files know it: "relay-stuck". Never changed once released.
std::string_view causeWord(AlarmCause cause);
std::optional<AlarmCause> causeOfWord(std::string_view word);
/// For people: "Relay stuck on?".
std::string_view causeTitle(AlarmCause cause);

/// Whether acknowledging it brings quiet. The unseen cone is quiet only once somebody has looked.
bool quietOnceAcknowledged(AlarmCause cause);

/// That something is the matter just now. What it is about, how pressing, and the evidence in words.
struct AlarmFinding {
    AlarmCause cause = AlarmCause::bandLeft;
    AlarmLevel level = AlarmLevel::notice;
    std::string words;
};

} // namespace ringhold
