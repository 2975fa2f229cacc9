#include "core/kiln/atmosphere.h"
#include "core/watch/cause_watch.h"

#include <cmath>

namespace ringhold {

namespace {

/// "climbing 310 °C/h", "falling 400 °C/h", "standing".
std::string motionWords(Rate rate, const WordStyle& style) {
    const double size = std::abs(rate.celsiusPerHour());
    if (size < 3)
        return "standing";
    return (rate.celsiusPerHour() > 0 ? "climbing " : "falling ") +
           rateWords(Rate::fromCelsiusPerHour(size), style);
}

std::string nowWords(const CauseFigures& figures, const WordStyle& style) {
    std::string words = figures.temperature ? temperatureWords(*figures.temperature, style) : std::string();
    if (figures.rate)
        words += (words.empty() ? "" : ", ") + motionWords(*figures.rate, style);
    return words;
}

std::string planWords(const CauseFigures& figures, const WordStyle& style) {
    if (figures.expectedRate && std::abs(figures.expectedRate->celsiusPerHour()) > 1)
        return "; the plan has " + rateWords(*figures.expectedRate, style);
    if (figures.expected)
        return "; the plan has " + temperatureWords(*figures.expected, style);
    return {};
}

std::string demandWords(const CauseFigures& figures) {
    return figures.demand ? " Power on " + percentWords(*figures.demand, 0) + " of the time." : std::string();
}

std::string sagWords(const CauseFigures& figures, const WordStyle& style) {
    std::string words;
    if (figures.volts && figures.usualVolts && figures.volts->volts < 0.975 * figures.usualVolts->volts) {
        const double down = 1 - figures.volts->volts / figures.usualVolts->volts;
        words = "Looks like the mains sagging: " + voltsWords(*figures.volts) + ", usual is " +
                voltsWords(*figures.usualVolts) + ". " + percentWords(down) + " less volts is " +
                percentWords(1 - powerShareAt(*figures.volts, *figures.usualVolts), 2) + " less power.";
    } else {
        words =
            "Looks like less power than before, as when the mains sag or an element fails: the climb slowed "
            "all at once.";
    }
    return words + " " + nowWords(figures, style) + planWords(figures, style) + ".";
}

std::string probeLowWords(const CauseFigures& figures) {
    if (figures.power && figures.powerBefore)
        return "Looks like a probe reading lower and lower, or a lid not quite shut: the kiln takes " +
               figure(figures.power->kilowatts(), 2) + " kW to show the same temperature, " +
               figure(figures.powerBefore->kilowatts(), 2) +
               " kW an hour ago, and goes on rising. If so it is hotter in there than shown.";
    return "Looks like the control probe reading lower and lower: the other probe has risen " +
           (figures.scatter ? figure(figures.scatter->celsius(), 1) + " °C" : std::string("away")) +
           " against it in this hold. If so it is hotter in there than shown.";
}

/// "5.2 %"; "less than 0.1 %".
std::string fewPercentWords(double share) {
    return share < 0.001 ? std::string("less than 0.1 %") : percentWords(share, 1);
}

} // namespace

std::string causeWords(const CauseFound& found, const WordStyle& style) {
    const auto& f = found.figures;
    const std::string now = nowWords(f, style);
    switch (found.cause) {
    case AlarmCause::sag:
        return sagWords(f, style);
    case AlarmCause::powerOff:
        return "Looks like the power is off: " + (f.volts ? voltsWords(*f.volts) + ", " : std::string()) +
               "no current. " + now + ".";
    case AlarmCause::ceiling:
        return "Looks like the kiln’s ceiling: " + now + " at full demand" + planWords(f, style) +
               ". Elements, supply or a lid not quite shut.";
    case AlarmCause::doorOpen:
        return "Looks like a door, lid or damper open" +
               std::string(f.demand && *f.demand > 0.1 ? ", the power is on" : ", or the power gone") + ": " +
               now + ", from " + temperatureWords(*f.expected, style) + " some minutes ago.";
    case AlarmCause::relayStuck:
        return "Looks like a relay stuck on: " + now + planWords(f, style) + "." + demandWords(f) +
               " Switch the kiln off at its breaker if it does not obey its controller.";
    case AlarmCause::wrongStep:
        return "Looks like the controller is in another step than the plan: " + now + planWords(f, style) +
               ".";
    case AlarmCause::aboveCeiling:
        return now + ": hotter than this plan ever goes, " + temperatureWords(*f.expected, style) + ".";
    case AlarmCause::frozen:
        return "Looks like a frozen reading: " + temperatureWords(*f.temperature, style, 1) +
               " again and again since " + clockWords(*f.since, style) +
               ". What the kiln does now is not known.";
    case AlarmCause::noisy:
        return "Readings scatter by ± " + differenceWords(*f.scatter, style, 1) + ", usual is ± " +
               differenceWords(*f.usualScatter, style, 1) +
               ": looks like a loose wire, a dying thermocouple or something switching nearby.";
    case AlarmCause::probeReversed:
        return "Looks like a thermocouple wired the wrong way round: " + now + " while heating, from " +
               temperatureWords(*f.expected, style) +
               ". The controller may be on full power: stop the firing until it is put right.";
    case AlarmCause::reducing:
        return "Oxygen probe at " + figure(f.oxygen->millivolts, 0) + " mV at " +
               temperatureWords(*f.temperature, style) + ", about " +
               fewPercentWords(oxygenShareFrom(*f.oxygen, *f.temperature)) +
               " oxygen: reducing enough to take zinc from the glaze. An estimate; it goes by the probe’s "
               "place.";
    case AlarmCause::probeLow:
        return probeLowWords(f);
    default:
        return now;
    }
}

} // namespace ringhold
