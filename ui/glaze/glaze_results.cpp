#include "ui/glaze/glaze_results.h"

#include "core/book/reader.h"
#include "core/learn/known_offset.h"
#include "ui/past/opened_firing.h"

#include <algorithm>
#include <cctype>
#include <chrono>
#include <cmath>

namespace ringhold {

namespace {

std::optional<double> hoursOf(const FiringFigures& figures) {
    if (!figures.growthHold)
        return std::nullopt;
    const auto length = figures.growthHold->end - figures.growthHold->start;
    return std::chrono::duration<double, std::ratio<3600>>(length).count();
}

} // namespace

CorrectedTemperature correctedFor(const std::vector<FiledOffset>& filed, FiringId firing, const Probe& probe,
                                  Temperature read, Temperature peak) {
    const KnownOffset known = knownOffset(filed, firing, probe, peak);
    const OffsetPrior carried = carriedTo(read, known.prior, peak);
    const double sd = carried.sd.celsius();
    const double own = std::min(known.own_C, sd);
    return {read.celsius() - carried.mean.celsius(), own, std::sqrt(sd * sd - own * own),
            std::to_string(static_cast<std::int64_t>(probe.id)) + " " + known.place};
}

Result<FiringResult> GlazeResults::read(const Book& book, FiringId firing) const {
    const auto opened = openFiring(book, firing, OpenedFor::comparing);
    if (!opened)
        return opened.error();
    FiringResult result{(*opened)->figures, (*opened)->probe, {}, {}};
    const auto filed = BookReader(book).filedOffsets((*opened)->record.kiln.id);
    if (!filed)
        return filed.error();
    if (!result.probe || !result.figures.peak)
        return result;
    const Temperature peak = result.figures.peak->temperature;
    result.peak = correctedFor(*filed, firing, *result.probe, peak, peak);
    if (result.figures.growthHold)
        result.growthHold =
            correctedFor(*filed, firing, *result.probe, result.figures.growthHold->mean, peak);
    return result;
}

Result<std::vector<PieceResult>> GlazeResults::of(const Book& book, const std::vector<GlazeFiring>& firings) {
    std::vector<PieceResult> results;
    for (const auto& used : firings) {
        if (!m_firings.contains(used.firing.id)) {
            auto read = this->read(book, used.firing.id);
            if (!read)
                return read.error();
            m_firings.emplace(used.firing.id, std::move(*read));
        }
        const auto& shared = m_firings.at(used.firing.id);
        for (const auto& outcome : used.outcomes) {
            const auto piece = std::ranges::find(used.pieces, outcome.piece, &Piece::id);
            PieceResult result{used.firing.id};
            result.growthHold = shared.growthHold;
            result.hold_h = hoursOf(shared.figures);
            result.peak = shared.peak;
            result.application = piece->application_g_per_cm2;
            result.position = piece->shelf;
            result.largest_mm = outcome.largest_mm;
            result.gradeRank = gradeRank(outcome.grade);
            result.crystals = outcome.crystals;
            results.push_back(std::move(result));
        }
    }
    return results;
}

std::optional<double> gradeRank(const std::string& grade) {
    if (grade.empty() || grade.size() > 2 || !std::isalpha(static_cast<unsigned char>(grade[0])))
        return std::nullopt;
    const double rank = 26 - (std::toupper(static_cast<unsigned char>(grade[0])) - 'A');
    if (grade.size() == 1)
        return rank;
    if (grade[1] != '+' && grade[1] != '-')
        return std::nullopt;
    return rank + (grade[1] == '+' ? 1.0 : -1.0) / 3;
}

} // namespace ringhold
