#include "app/demo/demo_ware.h"

#include "core/growth/crystal.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

struct Form {
    const char* name;
    const char* form;
};

constexpr std::array forms{Form{"tall bottle", "bottle"}, Form{"low bowl", "bowl"},
                           Form{"lidded jar", "jar"},     Form{"moon vase", "vase"},
                           Form{"test tile", "tile"},     Form{"bud vase", "vase"}};

double between(Chance& chance, double low, double high) {
    return low + (high - low) * chance.uniform();
}

double rounded(double value, double step) {
    return std::round(value / step) * step;
}

/// The curve that ware on a shelf feels.
Curve onShelf(const Curve& middle, TemperatureDifference difference) {
    Curve curve = middle;
    for (auto& point : curve)
        point.temperature = point.temperature + difference;
    return curve;
}

Temperature peakOf(const Curve& curve) {
    return std::ranges::max_element(curve, {}, &CurvePoint::temperature)->temperature;
}

Crystals amount(double seeds, double size_mm) {
    if (size_mm < 1.5 || seeds < 0.2)
        return Crystals::none;
    return seeds > 4 ? Crystals::covered : seeds > 0.8 ? Crystals::many : Crystals::few;
}

bool isGrave(const std::set<WareFault>& faults) {
    return faults.contains(WareFault::stuck) || faults.contains(WareFault::dunting) ||
           faults.contains(WareFault::noCrystals) || faults.contains(WareFault::dull);
}

std::string gradeOf(const Outcome& outcome) {
    const double size = outcome.largest_mm.value_or(0);
    if (size < 9 || isGrave(outcome.knownFaults))
        return "C";
    return size > 24 && outcome.knownFaults.empty() && outcome.catcherClean.value_or(true) ? "A" : "B";
}

void tellRun(Outcome& outcome, const Piece& piece, double run_mm) {
    outcome.runOff_mm = rounded(run_mm, 0.5);
    outcome.runOff = run_mm < 0.5 ? "none" : run_mm < 4 ? "a thin skirt" : "well into the catcher";
    outcome.catcherClean = piece.catcher ? std::optional(run_mm < 6) : std::nullopt;
    if (!piece.catcher && run_mm > 3)
        outcome.knownFaults.insert(WareFault::stuck);
}

void tellColours(Outcome& outcome, const DemoGlaze& glaze) {
    outcome.groundColour = glaze.groundColour;
    outcome.groundPicked = glaze.groundPicked;
    if (outcome.crystals == Crystals::none)
        return;
    outcome.crystalColour = glaze.crystalColour;
    outcome.crystalPicked = glaze.crystalPicked;
}

/// With a ruler, to a quarter of a millimetre.
std::vector<RingRadius> measuredRings(PieceId piece, const CrystalGrowth& growth,
                                      const std::vector<Ring>& rings, double factor, Chance& chance) {
    std::vector<RingRadius> radii;
    for (const auto& ring : rings) {
        const double true_mm = factor * growth.radiusAt(ring.low.start + ring.low.length).likely_mm;
        radii.push_back({piece, static_cast<int>(radii.size()),
                         std::max(0.25, rounded(true_mm + 0.3 * chance.normal(), 0.25)), 0.3});
    }
    return radii;
}

} // namespace

std::vector<DemoPiece> demoLoad(const DemoStudio& studio, const DemoFiring& firing, Chance& chance) {
    const auto& kiln = studio.kilns[firing.kiln];
    std::vector<DemoPiece> load;
    for (std::size_t shelf = 0; shelf < kiln.shelves.size(); ++shelf)
        for (std::size_t i = 0; i < std::max<std::size_t>(2, firing.glazes.size()); ++i) {
            DemoPiece made;
            made.glaze = firing.glazes[i % firing.glazes.size()];
            made.shelf = shelf;
            const Form& form = forms[static_cast<std::size_t>(chance.uniform() * forms.size())];
            Piece& piece = made.piece;
            piece.name = form.name + std::string(" ") + std::to_string(load.size() + 1);
            piece.form = form.form;
            piece.glaze = studio.glazes[made.glaze].card.name;
            piece.clay = chance.uniform() < 0.7 ? "porcelain" : "white stoneware";
            piece.shelf = kiln.shelves[shelf].name;
            piece.catcher = piece.form != "tile" && chance.uniform() < 0.93;
            piece.sagger = kiln.kiln.fuel != Fuel::electric;
            piece.application_g_per_cm2 = rounded(between(chance, 0.07, 0.15), 0.005);
            piece.spot =
                MapSpot{rounded(0.2 + 0.3 * static_cast<double>(i) + between(chance, -0.05, 0.05), 0.01),
                        rounded(between(chance, 0.3, 0.75), 0.01)};
            load.push_back(std::move(made));
        }
    return load;
}

DemoFound demoOutcome(const DemoPiece& made, const DemoStudio& studio, const DemoFiring& firing,
                      const DemoCourse& course, Chance& chance) {
    const auto& glaze = studio.glazes[made.glaze];
    const Curve felt = onShelf(course.felt, studio.kilns[firing.kiln].shelves[made.shelf].difference);
    const CrystalGrowth growth(felt, glaze.growth);
    const double peak_C = peakOf(felt).celsius();
    const double thickness = made.piece.application_g_per_cm2.value_or(0.1) / 0.1;
    const double factor = std::exp(0.12 * chance.normal()) * (course.reduced ? 0.5 : 1.0);
    const double size_mm = 2 * factor * growth.radius().likely_mm;
    const double seeds = std::exp((glaze.clearFrom.celsius() + 8 - peak_C) / 5 + 0.3 * chance.normal());
    DemoFound found;
    Outcome& outcome = found.outcome;
    outcome.piece = made.piece.id;
    outcome.crystals = amount(seeds, size_mm);
    if (outcome.crystals == Crystals::none) {
        outcome.knownFaults.insert(WareFault::noCrystals);
    } else {
        outcome.largest_mm = rounded(size_mm, 0.5);
        outcome.typical_mm = rounded(0.6 * size_mm, 0.5);
        const bool right = chance.uniform() < 0.8;
        const int rings = static_cast<int>(course.rings.size());
        if (size_mm > 8)
            outcome.rings = std::max(0, right ? rings : rings - 1);
        if (size_mm > 14 && right && chance.uniform() < 0.5)
            found.rings = measuredRings(made.piece.id, growth, course.rings, factor, chance);
    }
    if (seeds > 6)
        outcome.knownFaults.insert(WareFault::tooManySeeds);
    if (course.reduced)
        outcome.knownFaults.insert(WareFault::dull);
    if (chance.uniform() < 0.06)
        outcome.knownFaults.insert(WareFault::pinholes);
    tellRun(outcome, made.piece, std::max(0.0, (peak_C - glaze.runsFrom.celsius()) / 1.5 * thickness));
    tellColours(outcome, glaze);
    outcome.grade = gradeOf(outcome);
    if (outcome.grade == "A")
        outcome.note = "for the fair";
    return found;
}

SagSight demoSight(double depth_C, const DemoGlaze& glaze, Chance& chance) {
    if (chance.uniform() < 0.1)
        return SagSight::unsure;
    return std::log(depth_C / glaze.shows.celsius()) + 0.35 * chance.normal() > 0 ? SagSight::yes
                                                                                  : SagSight::no;
}

} // namespace ringhold
