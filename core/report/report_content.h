// What a firing report says, before anyone lays it out: values with their units, sources and intervals. Words
// for them are in core/report/words.h and core/report/report_words.h.
#pragma once

#include "core/cones/forecast.h"
#include "core/firing/records.h"
#include "core/growth/crystal.h"
#include "core/learn/firing_energy.h"
#include "core/report/log_line.h"
#include "core/report/words.h"
#include "core/units/curve.h"
#include "core/watch/hold_statistics.h"
#include "core/watch/ring_count.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// How a figure about a cone is known.
enum class ConeSource {
    unknown, ///< not reached, or nothing tells it
    look,    ///< seen so, to half an hour of the clock
    by,      ///< a look found it past that already
    model    ///< only the model tells, with its interval
};

/// When a cone passed an hour.
struct ConeMark {
    ConeSource source = ConeSource::unknown;
    std::optional<Instant> seen; ///< of the look
    TimeInterval model;          ///< given for source model
};

/// How a cone stands at the end of all that is known.
struct ConeStanding {
    ConeSource source = ConeSource::unknown;
    double hour = 0;
    Interval<double> model{}; ///< given for source model
    bool cold = false;        ///< read after the firing
};

struct ReportedCone {
    std::string cone;
    bool waitedFor = false; ///< the plan ends a cone wait by it
    ConeMark firstLean;     ///< between ½ and 1½ o'clock; the model's is at 1
    ConeMark three;
    ConeMark down;
    ConeStanding last;
};

/// What the probe reads above what the cones of a pack feel.
struct ReportedOffset {
    Interval<TemperatureDifference> offset; ///< 5 %, 50 %, 95 %
    int looks = 0;                          ///< that it rests on
    int earlierFirings = 0;                 ///< likewise, of this probe at this place
};

/// A look that does not fit the others or the model.
struct ReportedDoubt {
    Look look;
    TemperatureDifference meant; ///< what the probe would have to read above the cones for it
};

struct ReportedPack {
    std::string place;
    bool leansLeft = false;
    std::vector<ReportedCone> cones;
    std::optional<ReportedOffset> offset; ///< nothing without a look or an earlier firing
    std::vector<ReportedDoubt> doubts = {};
};

/// What the forecast said of a cone an hour before a look found it down.
struct ReportedForecast {
    std::string cone;
    std::string place; ///< of its pack
    Instant asOf;
    TimeInterval told; ///< the median is there
    Instant found;
    bool sooner = false; ///< it was down already when it was found so
};

/// What the firing filed of a probe for later ones.
struct ReportedFiled {
    std::string probe; ///< its label
    std::string place;
    TemperatureDifference mean; ///< what it reads above what the cones feel
    TemperatureDifference sd;
};

/// One hold of the plan.
struct ReportedHold {
    HoldBand band;
    Duration planned{0};
    std::optional<HoldStatistics> found; ///< nothing when the curve shows no such hold
    /// Where the middle of the longest excursion lies in the crystal, while it grew.
    std::optional<SizeRange> excursionRadius;
};

struct ReportedRing {
    Ring ring;
    CrystalRing drawn; ///< likely radii
};

struct ReportedRings {
    RingLevels levels;
    int planned = 0;
    std::vector<ReportedRing> rings;
};

/// The crystal that the curve draws, by the growth rate.
struct ReportedCrystal {
    SizeRange radius;
    std::vector<CrystalRing> rings;
    GrowthRate rate;
    Instant began;
    TemperatureDifference offsetTaken; ///< taken off the probe's readings
};

/// Electricity as one source knows it.
struct ReportedEnergy {
    KnownEnergy known;
    std::optional<double> cost; ///< in the potter's currency
};

/// By the gas meter's stands.
struct ReportedGas {
    double used_m3 = 0;
    std::optional<double> cost; ///< in the potter's currency
};

struct ReportedSupply {
    Volts min;
    Volts max;
    Instant minAt;
};

struct ReportedPeak {
    Temperature peak;
    Instant at;
    Duration within10C{0};         ///< total time not more than 10 °C below
    std::optional<Rate> lastClimb; ///< over the last 100 °C before it
};

struct ReportedReadings {
    std::size_t control = 0; ///< of the control probe, those that count
    std::size_t all = 0;     ///< over all channels, those that count
    std::size_t struck = 0;
    std::optional<Stretch> longestGap; ///< between readings of the control probe
};

struct ReportedBand {
    Stretch when;
    HoldBand band;
};

struct NamedCurve {
    std::string label;
    Curve curve;
};

struct ReportedCurves {
    Curve control; ///< may be empty
    std::vector<NamedCurve> others;
    Curve planned; ///< re-timed at each cone down that a look told; empty without a plan
    std::vector<ReportedBand> bands;
};

struct ReportedPhoto {
    std::string caption;
    std::string jpeg;
};

struct ReportedPiece {
    Piece piece;
    std::optional<Outcome> outcome;
    std::vector<ReportedPhoto> photos{};
};

/// The usual cautions, as far as they belong to the kiln.
enum class Caution { notebookOnly, spyhole, hotWare, dust, fumes, carbonMonoxide, licensedTrades };

struct ReportContent {
    FiringId firing{};
    Kiln kiln;
    std::string title;
    std::string planName; ///< empty without a plan
    Instant began;
    Instant until; ///< its end, or the last that is known of it
    bool stillOpen = false;
    WordStyle style;
    ReportedCurves curves;
    std::optional<ReportedPeak> peak;
    std::vector<ReportedPack> packs;
    std::vector<ReportedForecast> forecasts;
    std::vector<ReportedFiled> filed;
    std::vector<ReportedHold> holds;
    std::vector<ReportedRings> rings; ///< one for each rings step of the plan
    std::optional<ReportedCrystal> crystal;
    std::vector<ReportedEnergy> energies; ///< by every source, the most trusted first: it alone has a cost
    std::optional<ReportedGas> gas;
    std::optional<ReportedSupply> supply;
    ReportedReadings readings;
    std::vector<LogLine> log;
    std::vector<ReportedPiece> ware;
    std::vector<Caution> cautions;
};

} // namespace ringhold
