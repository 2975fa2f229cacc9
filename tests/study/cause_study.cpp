// What the watch takes each fault of a practice kiln for: a confusion table. Every row is a fault in practice
// firings of its own seed and moment; the column is the cause of the first alarm within 45 min of it (90 min
// for what comes slowly). Readings every 10 s; with volts and amps logged, then without. Last the alarms of
// whole firings in which nothing is wrong. Usage: cause_study [seeds]
#include "tests/support/watched_practice.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <vector>

using namespace ringhold;
using namespace ringhold::test;
using std::chrono::hours;
using std::chrono::minutes;

namespace {

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}
Rate perHour(double degrees) {
    return Rate::fromCelsiusPerHour(degrees);
}

/// As the practice plan, with a climb that a sound kiln has power to spare for.
Plan studyPlan() {
    return {"study",
            {Climb{celsius(1100), perHour(150)},
             ConeWait{"9", perHour(60), celsius(1265), celsius(1285), minutes(90)}, Drop{celsius(1090), {}},
             Hold{celsius(1090), minutes(210), TemperatureDifference::fromCelsius(6)},
             Rings{3, celsius(1050), minutes(10), celsius(1090), minutes(10)}, Cool{celsius(700), {}}}};
}

/// Where in the firing a fault comes.
enum class Where { start, climb, coneWait, hold };

struct Scenario {
    std::string name;
    AlarmCause meant;
    Where where;
    std::optional<FaultKind> kind;
    double size = 0;
    std::optional<Duration> length{};
    Duration within = minutes(45);
    double hurry = 0; ///< the controller's plan climbs so much faster or slower in the cone wait: its share
};

const std::vector<Scenario> scenarios{
    {"sag 15 %, climb", AlarmCause::sag, Where::coneWait, FaultKind::sag, 36},
    {"sag 6 %, climb", AlarmCause::sag, Where::coneWait, FaultKind::sag, 14},
    {"sag 25 %, climb", AlarmCause::sag, Where::climb, FaultKind::sag, 60},
    {"power off, hold", AlarmCause::powerOff, Where::hold, FaultKind::sag, 240},
    {"worn elements, 35 %", AlarmCause::ceiling, Where::start, FaultKind::wornElements, 1.35, {}, hours(12)},
    {"readings stop", AlarmCause::readingsStopped, Where::hold, FaultKind::silence, 0},
    {"frozen, climb", AlarmCause::frozen, Where::climb, FaultKind::frozenValue, 0},
    {"frozen, hold", AlarmCause::frozen, Where::hold, FaultKind::frozenValue, 0},
    {"noise x 12", AlarmCause::noisy, Where::hold, FaultKind::noisyProbe, 12},
    {"probe open", AlarmCause::probeOpen, Where::hold, FaultKind::openProbe, 0},
    {"probe reversed", AlarmCause::probeReversed, Where::start, FaultKind::reversedProbe, 0},
    {"probe ageing 12 °C/h", AlarmCause::probeLow, Where::hold, FaultKind::ageingProbe, 12, {}, hours(2)},
    {"door 8 min, hold", AlarmCause::doorOpen, Where::hold, FaultKind::openDoor, 12, minutes(8)},
    {"door 8 min, climb", AlarmCause::doorOpen, Where::climb, FaultKind::openDoor, 25, minutes(8)},
    {"relay stuck, hold", AlarmCause::relayStuck, Where::hold, FaultKind::stuckRelay, 0},
    {"relay stuck, climb", AlarmCause::relayStuck, Where::climb, FaultKind::stuckRelay, 0},
    {"controller climbs again", AlarmCause::wrongStep, Where::hold, {}},
    {"controller stays on top", AlarmCause::wrongStep, Where::coneWait, {}},
};

Duration beginOf(Where where, int seed) {
    const auto jitter = minutes(7 * (seed % 5));
    switch (where) {
    case Where::start:
        return Duration(0);
    case Where::climb:
        return hours(3) + jitter;
    case Where::coneWait:
        return hours(8) + minutes(20) + jitter;
    default:
        return hours(12) + jitter;
    }
}

PracticeSettings settingsOf(const Scenario& scenario, int seed) {
    auto settings = drawnPracticeSettings(studyPlan(), static_cast<std::uint64_t>(seed));
    if (scenario.kind)
        settings.faults = {{*scenario.kind, beginOf(scenario.where, seed), scenario.length, scenario.size}};
    else if (scenario.where == Where::hold) // a drift down instead of the hold's second half
        settings.plan.steps[3] =
            Hold{celsius(1090), minutes(80 + 5 * (seed % 5)), TemperatureDifference::fromCelsius(6)},
        settings.plan.steps[4] = Climb{celsius(1160), perHour(40)};
    return settings;
}

bool isCause(const AlarmEvent& event) {
    const auto cause = causeOfWord(event.cause);
    return cause != AlarmCause::coneDue && cause != AlarmCause::coneUnseen && cause != AlarmCause::attendance;
}

struct Told {
    std::string first = "-";
    double delay_min = 0;
    bool meantToo = false; ///< among all that were raised
};

Told tell(const Scenario& scenario, int seed, bool electrics) {
    WatchedPractice::Options options;
    options.watched = studyPlan();
    options.electrics = electrics;
    options.forecast = false;
    const bool staysOnTop = !scenario.kind && scenario.where == Where::coneWait;
    WatchedPractice practice(settingsOf(scenario, seed), options);
    Instant from = practice.began() + beginOf(scenario.where, seed);
    if (!scenario.kind)
        from = practice.began() + hours(11);
    if (staysOnTop) { // the potter writes the cone down but forgets the controller
        while (practice.step() && practice.kiln().step() < 1)
            ;
        while (practice.elapsed() < hours(8) + minutes(40) && practice.step())
            ;
        from = practice.now();
        (void)practice.firing().writeLook(PackId{1}, from, "9", 6);
    }
    practice.runUntil(from - practice.began() +
                      (scenario.kind || staysOnTop ? scenario.within : minutes(120)));
    Told told;
    if (const auto* first = practice.firstRaised(from, isCause)) {
        told.first = first->cause;
        told.delay_min = inMinutes(first->at - from);
    }
    told.meantToo = practice.firstRaised(
        from, [&](const AlarmEvent& event) { return event.cause == causeWord(scenario.meant); });
    return told;
}

void table(int seeds, bool electrics) {
    std::printf("\n%s\n%-26s %5s %5s %7s  first alarm\n",
                electrics ? "volts and amps logged" : "temperature alone", "fault", "first", "ever", "min");
    for (const auto& scenario : scenarios) {
        std::map<std::string, int> firsts;
        int right = 0, ever = 0;
        std::vector<double> delays;
        for (int seed = 1; seed <= seeds; ++seed) {
            const auto told = tell(scenario, seed, electrics);
            ++firsts[told.first];
            ever += told.meantToo;
            if (told.first == causeWord(scenario.meant)) {
                ++right;
                delays.push_back(told.delay_min);
            }
        }
        std::ranges::sort(delays);
        std::printf("%-26s %5d %5d %7.1f ", scenario.name.c_str(), right, ever,
                    delays.empty() ? 0.0 : delays[delays.size() / 2]);
        for (const auto& [cause, count] : firsts)
            std::printf(" %s %d", cause.c_str(), count);
        std::puts("");
        std::fflush(stdout);
    }
}

void soundFirings(int seeds, bool electrics) {
    std::map<std::string, int> alarms;
    double held_h = 0;
    for (int seed = 1; seed <= seeds; ++seed) {
        WatchedPractice::Options options;
        options.electrics = electrics;
        options.forecast = false;
        WatchedPractice practice(drawnPracticeSettings(studyPlan(), static_cast<std::uint64_t>(seed)),
                                 options);
        while (practice.step())
            ;
        held_h += inHours(practice.elapsed());
        for (const auto& event : practice.events())
            if (event.change == AlarmChange::raised && isCause(event))
                ++alarms[event.cause];
    }
    std::printf("\nnothing wrong, %d firings, %.0f h: ", seeds, held_h);
    for (const auto& [cause, count] : alarms)
        std::printf(" %s %d", cause.c_str(), count);
    std::puts(alarms.empty() ? " no alarm" : "");
}

} // namespace

int main(int argc, char** argv) {
    const int seeds = argc > 1 ? std::atoi(argv[1]) : 20;
    for (const bool electrics : {true, false}) {
        table(seeds, electrics);
        soundFirings(seeds, electrics);
    }
}
