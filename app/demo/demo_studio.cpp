#include "app/demo/demo_studio.h"

#include "core/kiln/chance.h"

namespace ringhold {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

Temperature C(double degrees) {
    return Temperature::fromCelsius(degrees);
}

TemperatureDifference degrees(double difference) {
    return TemperatureDifference::fromCelsius(difference);
}

Rate perHour(double rate) {
    return Rate::fromCelsiusPerHour(rate);
}

Instant morning(const char* day) {
    return *parseIso8601(std::string(day) + "T06:10", demoZone);
}

GrowthRate bell(double best_C, double um_per_min) {
    return {{C(best_C - 130), C(best_C - 55), C(best_C), C(best_C + 35), C(best_C + 95)},
            um_per_min,
            um_per_min,
            um_per_min,
            GrowthBasis::measured,
            0};
}

RecipeLine frit(double percent, std::optional<double> batch_g) {
    return {"high-soda frit", percent, false,
            batch_g,          "",      {{"SiO2", 62}, {"Na2O", 24}, {"CaO", 8}, {"Al2O3", 6}}};
}

DemoGlaze frostFern() {
    GlazeCard card;
    card.name = "Frost fern";
    card.cone = "9";
    card.top = C(1272);
    card.running = "fast above 1265, needs a catcher";
    card.growLow = C(1060);
    card.growHigh = C(1105);
    card.colourTemperatures = "white below 1075, a breath of blue above";
    card.habits = {{C(1085), C(1110), "bars"}, {C(1050), C(1085), "fans"}};
    card.application = "two coats, three at the rim";
    card.recipe = {frit(47, 470),
                   {"zinc oxide", 26, false, 260, "ZnO", {}},
                   {"quartz", 25.5, false, 255, "SiO2", {}},
                   {"kaolin, calcined", 1.5, false, 15, "Al2O3.2SiO2", {}},
                   {"titanium dioxide", 4, true, 40, "TiO2", {}}};
    card.notes = "Ball-mill an hour. Use within a week: it settles like concrete.";
    return {card, bell(1083, 62), C(1264), C(1258), degrees(5), "white", "#f2f4f1", "pale blue", "#a9bfd2"};
}

DemoGlaze lichenGold() {
    GlazeCard card;
    card.name = "Lichen gold";
    card.cone = "9";
    card.top = C(1268);
    card.running = "stiffer than Frost fern";
    card.growLow = C(1035);
    card.growHigh = C(1085);
    card.colourTemperatures = "gold below 1060, straw above";
    card.habits = {{C(1030), C(1065), "discs"}};
    card.application = "two coats";
    card.recipe = {frit(49, 490),
                   {"zinc oxide", 25, false, 250, "ZnO", {}},
                   {"quartz", 26, false, 260, "SiO2", {}},
                   {"manganese carbonate", 2, true, 20, "MnCO3", {}},
                   {"rutile", 3, true, 30, "TiO2", {}}};
    card.notes = "Manganese: a mask when mixing, and nobody in the shed without the vent on.";
    return {card, bell(1058, 45), C(1272), C(1255), degrees(8), "gold", "#c79a3c", "olive", "#6f6a45"};
}

DemoGlaze deepWater() {
    GlazeCard card;
    card.name = "Deep water";
    card.cone = "9";
    card.top = C(1270);
    card.running = "runs like syrup";
    card.growLow = C(1070);
    card.growHigh = C(1120);
    card.colourTemperatures = "ink at 1100, teal below 1080";
    card.application = "one thick coat";
    card.recipe = {frit(46, std::nullopt),
                   {"zinc oxide", 27, false, std::nullopt, "ZnO", {}},
                   {"quartz", 27, false, std::nullopt, "SiO2", {}},
                   {"cobalt carbonate", 0.6, true, std::nullopt, "CoCO3", {}}};
    return {card,          bell(1097, 74), C(1260),     C(1262),  degrees(4),
            "silver blue", "#8fb4cc",      "deep blue", "#1f3b5c"};
}

/// Climb, wait for cone 9, down to the growth hold, rings if any, out.
Plan planFor(const std::string& name, double set_C, double grow_C, int hold_min, int rings,
             double ringDown_C = 28) {
    Plan plan{name,
              {Climb{C(1140), perHour(170)}, ConeWait{"9", perHour(60), C(set_C), C(set_C + 22), minutes(90)},
               Drop{C(grow_C), std::nullopt}, Hold{C(grow_C), minutes(hold_min), degrees(5)}}};
    if (rings > 0)
        plan.steps.emplace_back(Rings{rings, C(grow_C - ringDown_C), minutes(12), C(grow_C), minutes(14)});
    plan.steps.emplace_back(Cool{C(650), std::nullopt});
    return plan;
}

DemoKiln electricKiln(Chance& chance) {
    DemoKiln studio;
    studio.kiln.name = "Heron";
    studio.kiln.fuel = Fuel::electric;
    studio.kiln.volume_L = 115;
    studio.kiln.ratedPower = studio.constants.fullPower;
    studio.kiln.ratedVolts = studio.constants.ratedVolts;
    studio.kiln.pricePerKilowattHour = 0.24;
    studio.kiln.note = "Invented: a practice kiln. Front loader, elements on three sides and in the door.";
    studio.probes = {{{.label = "old S",
                       .type = ThermocoupleType::S,
                       .position = "back wall, middle",
                       .fitted = morning("2024-04-02"),
                       .retired = morning("2025-11-22")},
                      degrees(6 + chance.normal())},
                     {{.label = "new S",
                       .type = ThermocoupleType::S,
                       .position = "back wall, middle",
                       .fitted = morning("2025-11-22"),
                       .retired = {}},
                      degrees(-3 + chance.normal())}};
    studio.place = degrees(2 + 0.5 * chance.normal());
    studio.shelves = {{"top", degrees(4)}, {"middle", degrees(0)}, {"bottom", degrees(-7)}};
    return studio;
}

DemoKiln gasKiln(Chance& chance) {
    DemoKiln studio;
    studio.kiln.name = "Badger";
    studio.kiln.fuel = Fuel::gas;
    studio.kiln.volume_L = 240;
    studio.kiln.gasPrice = 1.15;
    studio.kiln.note = "Invented: a practice kiln. Downdraft, two burners; zinc glazes go in saggers.";
    auto& c = studio.constants;
    c.chamber_J_per_K *= 2.1;
    c.brick_J_per_K *= 1.9;
    c.chamberToBrick_W_per_K *= 1.9;
    c.brickLoss_W_per_K *= 2.0;
    c.chamberLoss_W_per_K *= 2.4;
    c.radiatingArea_m2 *= 2.4;
    c.fullPower = Power{27e3};
    studio.probes = {{{.label = "S",
                       .type = ThermocoupleType::S,
                       .position = "through the arch",
                       .fitted = morning("2025-03-10"),
                       .retired = {}},
                      degrees(9 + chance.normal())}};
    studio.place = degrees(-3 + 0.5 * chance.normal());
    studio.shelves = {{"top", degrees(9)}, {"middle", degrees(0)}, {"bottom", degrees(-11)}};
    return studio;
}

TimedFault sag(double afterHours, int length_min, double volts) {
    return {FaultKind::sag, minutes(static_cast<int>(afterHours * 60)), minutes(length_min), volts};
}

enum Glaze : std::size_t { frost, lichen, water };
constexpr std::size_t heron = 0;
constexpr std::size_t badger = 1;

std::vector<DemoFiring> firings() {
    std::vector<DemoFiring> all;
    all.push_back({heron,
                   0,
                   {frost, lichen},
                   "September vases",
                   planFor("Frost, 3 h", 1270, 1085, 180, 3),
                   morning("2025-09-06"),
                   1.00,
                   {},
                   {"New shelves, washed twice. 17 °C in the shed.", "", "", "Quiet night. Kettle on."}});
    all.push_back({heron,
                   0,
                   {frost},
                   "Frost hot and still",
                   planFor("Frost, hot", 1270, 1100, 180, 0),
                   morning("2025-09-20"),
                   1.01,
                   {},
                   {"Same vases as last time, held 15 °C hotter, to see bars.", "Fan off at 1100."}});
    all.push_back({heron,
                   0,
                   {water, frost},
                   "Bottles for the fair",
                   planFor("Deep water", 1270, 1092, 210, 4),
                   morning("2025-10-04"),
                   1.02,
                   {sag(11.2, 22, 110)},
                   {"Full load, nine bottles.", "", "", "Lights in the shed went dim for a while."}});
    all.push_back({badger,
                   0,
                   {water, frost},
                   "First in the gas kiln",
                   planFor("Gas, no rings", 1274, 1092, 150, 0),
                   morning("2025-10-11"),
                   1.0,
                   {},
                   {"All in saggers. Flame check done, alarm tested.", "", "Burners off, ports closed."},
                   0.075});
    all.push_back({heron,
                   0,
                   {lichen},
                   "Lichen low",
                   planFor("Lichen low", 1270, 1056, 200, 2),
                   morning("2025-10-25"),
                   1.03,
                   {},
                   {"Only Lichen gold, from thick to thin."}});
    all.push_back({heron,
                   0,
                   {frost, water},
                   "Five rings",
                   planFor("Five rings", 1270, 1078, 200, 5),
                   morning("2025-11-15"),
                   1.04,
                   {{FaultKind::openDoor, minutes(250), minutes(4), 30}},
                   {"Bung fell out at the first look, put back."}});
    all.push_back({badger,
                   0,
                   {water},
                   "Damper lesson",
                   planFor("Gas, two rings", 1274, 1096, 150, 2),
                   morning("2025-11-29"),
                   1.0,
                   {},
                   {"Windy, north-west.", "", "Damper was too far in. Opened."},
                   0.07,
                   TimedFault{FaultKind::sag, minutes(500), minutes(18), 1e-9}});
    all.push_back({heron,
                   1,
                   {lichen, frost},
                   "New probe",
                   planFor("Between the two", 1262, 1068, 180, 3),
                   morning("2025-12-06"),
                   1.05,
                   {},
                   {"First firing with the new probe: trust the cones."}});
    all.push_back({heron,
                   1,
                   {water, frost},
                   "Hot and short",
                   planFor("Hot and short", 1262, 1104, 150, 2),
                   morning("2026-01-10"),
                   1.07,
                   {{FaultKind::noisyProbe, minutes(620), minutes(40), 9}},
                   {"Frost outside, 4 °C in the shed.", "", "",
                    "Wind in the flue? Probe jumpy, wire touched the rack."}});
    all.push_back({heron,
                   1,
                   {frost, lichen},
                   "Slow winter",
                   planFor("Long hold", 1262, 1085, 240, 4),
                   morning("2026-01-31"),
                   1.08,
                   {sag(12.0, 12, 90)},
                   {"Longest hold so far."}});
    all.push_back({badger,
                   0,
                   {frost, water},
                   "Saggers again",
                   planFor("Gas, two rings", 1274, 1088, 180, 2),
                   morning("2026-02-07"),
                   1.0,
                   {},
                   {"Damper marked with chalk at the good place."},
                   0.08});
    all.push_back({heron,
                   1,
                   {frost, lichen, water},
                   "One of each",
                   planFor("Middle way", 1262, 1080, 200, 4),
                   morning("2026-02-21"),
                   1.09,
                   {},
                   {"One of each on every shelf, to learn where to put them."}});
    return all;
}

} // namespace

DemoStudio demoStudio(std::uint64_t seed) {
    Chance chance(seed, 77);
    DemoStudio studio;
    studio.kilns = {electricKiln(chance), gasKiln(chance)};
    studio.glazes = {frostFern(), lichenGold(), deepWater()};
    studio.firings = firings();
    studio.services = {
        {heron, {{}, {}, {}, morning("2025-05-17"), ServiceKind::elements, "All elements new."}},
        {heron,
         {{}, {}, {}, morning("2025-11-22"), ServiceKind::probe, "New probe, old one was brittle."},
         1},
        {heron,
         {{}, {}, {}, morning("2026-01-16"), ServiceKind::relay, "Right-hand relay chattered: replaced."}},
        {badger,
         {{}, {}, {}, morning("2025-09-30"), ServiceKind::other, "Burners cleaned, gas fitter's check."}}};
    studio.checklist = {"Catchers ground flat and waxed", "Packs where the spyhole sees them",
                        "Fan on, shed door on the latch"};
    return studio;
}

} // namespace ringhold
