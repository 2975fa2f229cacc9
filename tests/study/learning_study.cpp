// How honest is the learning? Invented glazes whose truth is known are fired, graded and asked about. Prints
// how often something is claimed where nothing is there, how often a real best temperature is found, and how
// often bands and intervals hold the truth. Fixed seeds. Usage: learning_study [glazes]
#include "core/kiln/chance.h"
#include "core/learn/learning.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace {

using namespace ringhold;

/// How a glaze really behaves, and how it is fired.
struct Nature {
    double best_C = 1090;
    double bend_mm_per_C2 = 0; ///< lost with the square of the distance from the best
    double perHour_mm = 0;     ///< by hold time
    double shelf_mm = 0;       ///< of the bottom shelf
    double firingSd_mm = 2.5;  ///< firings differ for reasons nobody knows
    double pieceSd_mm = 4;     ///< and so do pieces
    double ownSd_C = 2;        ///< of the hold temperatures, firing by firing
    double sharedSd_C = 4;     ///< and of the probe's offset
    double spreadSd_C = 15;    ///< of the holds that the potter chose
    bool confounded = false;   ///< longer holds when hotter, hot firings' pieces on the bottom shelf
    bool heavyTails = false;   ///< a piece in ten is far off
};

double sizeAt(const Nature& nature, double trueHold_C, double hold_h) {
    const double off = trueHold_C - nature.best_C;
    return 30 - nature.bend_mm_per_C2 * off * off + nature.perHour_mm * (hold_h - 4);
}

std::vector<PieceResult> fired(const Nature& nature, int firings, Chance& chance) {
    std::vector<PieceResult> pieces;
    const double shared_C = nature.sharedSd_C * chance.normal();
    for (int f = 0; f < firings; ++f) {
        const double hold_C = 1088 + nature.spreadSd_C * chance.normal();
        const double chosen = (hold_C - 1088) / nature.spreadSd_C;
        const double hold_h =
            std::clamp(4 + (nature.confounded ? 0.9 * chosen : 0.0) + 0.6 * chance.normal(), 1.0, 8.0);
        const double peak_C = 1270 + 5 * chance.normal();
        const double seen_C = hold_C + shared_C + nature.ownSd_C * chance.normal();
        const double firing_mm = nature.firingSd_mm * chance.normal();
        const int count = 1 + static_cast<int>(chance.uniform() * 6);
        for (int p = 0; p < count; ++p) {
            PieceResult piece;
            piece.firing = FiringId{f + 1};
            const bool bottom =
                nature.confounded && chance.uniform() < 0.8 ? chosen > 0 : chance.uniform() < 0.4;
            piece.position = bottom ? "bottom" : chance.uniform() < 0.5 ? "middle" : "top";
            piece.application = 10 + 2 * chance.normal();
            piece.growthHold = CorrectedTemperature{seen_C, nature.ownSd_C, nature.sharedSd_C, "K1"};
            piece.peak = CorrectedTemperature{peak_C, nature.ownSd_C, nature.sharedSd_C, "K1"};
            piece.hold_h = hold_h;
            double noise = chance.normal();
            if (nature.heavyTails && chance.uniform() < 0.1)
                noise *= 3;
            const double size = sizeAt(nature, hold_C, hold_h) + (bottom ? nature.shelf_mm : 0) + firing_mm +
                                nature.pieceSd_mm * noise;
            piece.largest_mm = std::max(0.0, size);
            piece.gradeRank = std::round(size / 8 + chance.normal());
            piece.crystals = size < 22 ? Crystals::few : size < 32 ? Crystals::many : Crystals::covered;
            pieces.push_back(piece);
        }
    }
    return pieces;
}

struct Tally {
    int claims = 0;      ///< glazes with any claim
    int threeClaims = 0; ///< the same when all three outcomes are looked at
    int holdClaims = 0;
    int bestClaims = 0;
    int nothing = 0; ///< nothing seen, said of the growth hold
    int bandHolds = 0;
    int bandTried = 0;
    int bestHolds = 0;
    int bestTried = 0;
    double bestHalf_C = 0;
    int confounded = 0;
};

bool anyClaim(const std::vector<Lesson>& lessons) {
    return std::ranges::any_of(lessons, [](const Lesson& l) { return l.verdict == Verdict::claimed; });
}

/// Whether the band holds the true curve at its middle and its quarters.
void tryBand(Tally& tally, const Lesson& hold, const Nature& nature) {
    for (const std::size_t i : {8U, 16U, 24U}) {
        const auto& value = hold.curve[i];
        const double truth = sizeAt(nature, value.cause, 4);
        tally.bandHolds += value.low <= truth && truth <= value.high;
        ++tally.bandTried;
    }
}

void take(Tally& tally, const std::vector<Lesson>& lessons, const Nature& nature) {
    const auto& hold = lessons.front();
    tally.claims += anyClaim(lessons);
    tally.nothing += hold.verdict == Verdict::nothingSeen;
    tally.confounded += !hold.confounders.empty();
    if (!hold.curve.empty())
        tryBand(tally, hold, nature);
    if (hold.verdict != Verdict::claimed)
        return;
    ++tally.holdClaims;
    if (hold.claim->trend != Trend::best)
        return;
    ++tally.bestClaims;
    if (!hold.claim->bestAt90)
        return;
    ++tally.bestTried;
    const auto [low, high] = *hold.claim->bestAt90;
    tally.bestHolds += low <= nature.best_C && nature.best_C <= high;
    tally.bestHalf_C += (high - low) / 2;
}

void study(const char* name, const Nature& nature, int glazes) {
    std::printf("\n%s\nfirings  any claim  any of 3  hold claimed  as best  nothing seen  confounded  band "
                "holds  best "
                "holds  +-°C\n",
                name);
    for (const int firings : {3, 4, 6, 8, 12, 20, 40}) {
        Tally tally;
        for (int g = 0; g < glazes; ++g) {
            Chance chance(static_cast<std::uint64_t>(g), static_cast<std::uint64_t>(firings));
            const auto pieces = fired(nature, firings, chance);
            take(tally, learnFrom(pieces, {}), nature);
            bool any = false;
            for (const Judged judged : {Judged::largest, Judged::grade, Judged::crystals})
                any = any || anyClaim(learnFrom(pieces, {judged, 3}));
            tally.threeClaims += any;
        }
        const auto percent = [](int part, int whole) { return whole > 0 ? 100.0 * part / whole : 0.0; };
        std::printf("%7d %9.1f%% %8.1f%% %12.1f%% %7.1f%% %12.1f%% %10.1f%% %10.1f%% %10.1f%% %6.1f\n",
                    firings, percent(tally.claims, glazes), percent(tally.threeClaims, glazes),
                    percent(tally.holdClaims, glazes), percent(tally.bestClaims, glazes),
                    percent(tally.nothing, glazes), percent(tally.confounded, glazes),
                    percent(tally.bandHolds, tally.bandTried), percent(tally.bestHolds, tally.bestTried),
                    tally.bestTried > 0 ? tally.bestHalf_C / tally.bestTried : 0.0);
    }
}

} // namespace

int main(int argc, char** argv) {
    const int glazes = argc > 1 ? std::atoi(argv[1]) : 1000;
    study("Nothing is there", {}, glazes);
    study("Nothing is there, causes go along, a piece in ten is far off",
          {.confounded = true, .heavyTails = true}, glazes);
    study("A best hold at 1090 °C, 10 mm lost 30 °C away", {.bend_mm_per_C2 = 10.0 / 900}, glazes);
    study("The same, the offsets worse known (own 6, shared 8 °C)",
          {.bend_mm_per_C2 = 10.0 / 900, .ownSd_C = 6, .sharedSd_C = 8}, glazes);
    study("The same, held between 1070 and 1100 °C mostly", {.bend_mm_per_C2 = 10.0 / 900, .spreadSd_C = 8},
          glazes);
    return 0;
}
