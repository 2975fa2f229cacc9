// What the book keeps: plain values, one struct a kind of line in the notebook. No behaviour, no SQL, no text
// for people.
#pragma once

#include "core/cones/cone.h"
#include "core/plan/plan.h"
#include "core/thermocouple/thermocouple_type.h"
#include "core/units/electrical.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace ringhold {

enum class KilnId : std::int64_t {};
enum class ProbeId : std::int64_t {};
enum class FiringId : std::int64_t {};
enum class ChannelId : std::int64_t {};
enum class PackId : std::int64_t {};
enum class LookId : std::int64_t {};
enum class NoteId : std::int64_t {};
enum class SettingId : std::int64_t {};
enum class PieceId : std::int64_t {};

enum class Fuel { electric, gas, wood };

struct Kiln {
    KilnId id{};
    std::string name; ///< unique in the book
    Fuel fuel = Fuel::electric;
    std::optional<double> volume_L;
    std::optional<Power> ratedPower; ///< at ratedVolts
    std::optional<Volts> ratedVolts;
    std::optional<double> pricePerKilowattHour; ///< in the potter's own currency
    std::string note;
    std::optional<double> gasPrice{}; ///< for a cubic metre, in the same
};

/// A thermocouple and where it sits. A probe moved or replaced is a new Probe: its offset starts afresh.
struct Probe {
    ProbeId id{};
    KilnId kiln{};
    std::string label;
    ThermocoupleType type = ThermocoupleType::K;
    std::string position;
    std::optional<Instant> fitted;
    std::optional<Instant> retired;
};

/// What a channel measures, and thereby the unit of its values.
enum class Quantity {
    temperature,      ///< °C
    lineVolts,        ///< V
    lineAmps,         ///< A
    oxygenMillivolts, ///< mV
    duty              ///< share of full power, 0 to 1
};

/// One stream of values within one firing.
struct Channel {
    ChannelId id{};
    FiringId firing{};
    Quantity quantity = Quantity::temperature;
    std::string label;            ///< the instrument's label; "by hand" for typed readings
    std::optional<ProbeId> probe; ///< for temperatures
};

enum class Origin { instrument, hand };

struct Reading {
    ChannelId channel{};
    Instant at;
    double value = 0; ///< in the unit of the channel's quantity; finite
    Origin origin = Origin::instrument;
    bool struck = false; ///< crossed out by the potter; stays readable, counts for nothing
};

/// Where something stands on its shelf, seen from above: from the left and from the front, as shares of the
/// shelf's width and depth, 0 to 1.
struct MapSpot {
    double x = 0;
    double y = 0;
    bool operator==(const MapSpot&) const = default;
};

/// Cones set side by side on one place in the kiln, in the order guide, firing, guard (any number is
/// allowed).
struct Pack {
    PackId id{};
    FiringId firing{};
    std::string place; ///< "middle shelf"
    ConeType type = ConeType::selfSupporting;
    std::vector<std::string> cones; ///< "8", "9", "10"
    bool leansLeft = false;
    std::string shelf{}; ///< called as the pieces' shelves are
    std::optional<MapSpot> spot{};
};

/// One observation of one cone.
struct Look {
    LookId id{};
    PackId pack{};
    Instant at;
    std::string cone;
    double hour = 0;   ///< where the tip points: 0 standing (12 o'clock), 0.5 to 5.5 in halves, 6 down
    bool cold = false; ///< read after the firing, from the cold pack
    bool struck = false;
};

/// Gas pressure, damper, burner or switch position, set by hand.
struct Setting {
    SettingId id{};
    FiringId firing{};
    Instant at;
    std::string what;  ///< "damper"
    std::string value; ///< "half open"
    bool struck = false;
};

struct Note {
    NoteId id{};
    FiringId firing{};
    Instant at;
    std::string text;
    bool struck = false;
};

struct Piece {
    PieceId id{};
    FiringId firing{};
    std::string name;
    std::string glaze; ///< one, or several parted by "+" or ",": names of glaze cards where there are any
    std::string shelf;
    bool catcher = false;
    bool sagger = false;
    std::string form{}; ///< "bottle"
    std::string clay{};
    std::optional<double> application_g_per_cm2{}; ///< dry glaze on its surface, above 0
    std::optional<MapSpot> spot{};                 ///< on the shelf
};

enum class Crystals { none, few, many, covered };

/// What went wrong with a piece, as far as there is a common word for it.
enum class WareFault { crawled, pinholes, noCrystals, tooManySeeds, dunting, stuck, dull };

/// What came out of the kiln, for one piece.
struct Outcome {
    PieceId piece{};
    std::optional<Crystals> crystals;
    std::optional<double> largest_mm; ///< diameter of the largest crystal
    std::optional<int> rings;
    std::string faults; ///< in the potter's own words
    std::string grade;
    std::string note;
    std::optional<double> typical_mm{}; ///< diameter of a typical crystal
    std::string crystalColour{};        ///< in words
    std::string crystalPicked{};        ///< "#rrggbb", or empty
    std::string groundColour{};
    std::string groundPicked{};
    std::string runOff{};               ///< how the glaze ran, in words
    std::optional<double> runOff_mm{};  ///< below the foot
    std::optional<bool> catcherClean{}; ///< it came off clean
    std::set<WareFault> knownFaults{};  ///< those with a common word; faults has the rest
};

/// What a past firing told of a probe: how much it reads above what the cones feel, as mean and standard
/// deviation.
struct FiledOffset {
    FiringId firing{};
    KilnId kiln{};
    ProbeId probe{};
    std::string place; ///< of the pack that told it
    Instant at;
    TemperatureDifference mean;
    TemperatureDifference sd;
};

struct Firing {
    FiringId id{};
    KilnId kiln{};
    std::string title;
    Instant began;
    std::optional<Instant> ended;
    std::optional<Plan> plan; ///< as it was when the firing began
    std::string modelJson;    ///< the parameters that its forecasts ran with
};

} // namespace ringhold
