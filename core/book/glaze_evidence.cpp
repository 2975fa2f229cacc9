#include "core/book/glaze_evidence.h"

#include "core/book/ware_finds.h"
#include "core/glaze/glaze_card.h"
#include "core/learn/known_offset.h"
#include "core/report/report_curves.h"

#include <algorithm>

namespace ringhold {

namespace {

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string folded(std::string name) {
    std::ranges::transform(name, name.begin(), lower);
    return name;
}

/// What hangs on the pieces of one firing that carry the glaze.
struct Findings {
    std::vector<std::optional<double>> largest_mm;
    std::vector<std::vector<RingRadius>> radii;
    std::vector<SagSeen> sags;

    bool empty() const {
        return sags.empty() &&
               std::ranges::none_of(largest_mm, [](const auto& size) { return size.has_value(); }) &&
               std::ranges::all_of(radii, [](const auto& rings) { return rings.empty(); });
    }
};

Result<Findings> findingsOf(const Book& book, FiringId firing, const std::string& glaze) {
    const BookReader reader(book);
    const WareFinds finds(book);
    const auto pieces = reader.pieces(firing);
    const auto outcomes = reader.outcomes(firing);
    if (!pieces || !outcomes)
        return pieces ? outcomes.error() : pieces.error();
    Findings found;
    for (const auto& piece : *pieces) {
        if (folded(soleGlaze(piece)) != glaze)
            continue;
        const auto outcome = std::ranges::find(*outcomes, piece.id, &Outcome::piece);
        auto radii = finds.rings(piece.id);
        const auto sags = finds.sags(piece.id);
        if (!radii || !sags)
            return radii ? sags.error() : radii.error();
        found.largest_mm.push_back(outcome == outcomes->end() ? std::nullopt : outcome->largest_mm);
        found.radii.push_back(std::move(*radii));
        found.sags.insert(found.sags.end(), sags->begin(), sags->end());
    }
    return found;
}

GrownFiring grownFiring(const GrowthMarks& marks, const Findings& found) {
    GrownFiring grown{marks.felt, marks.offsetSd_C, {}};
    for (std::size_t i = 0; i < found.radii.size(); ++i)
        if (auto crystal = measuredCrystal(marks, found.largest_mm[i], found.radii[i]))
            grown.crystals.push_back(std::move(*crystal));
    return grown;
}

} // namespace

std::string soleGlaze(const Piece& piece) {
    const auto names = glazeNames(piece.glaze);
    return names.size() == 1 ? names.front() : std::string();
}

std::string mainGlaze(const std::vector<Piece>& pieces) {
    std::map<std::string, int> counts;
    for (const auto& piece : pieces)
        if (const auto glaze = folded(soleGlaze(piece)); !glaze.empty())
            ++counts[glaze];
    const auto most = std::ranges::max_element(counts, {}, [](const auto& entry) { return entry.second; });
    if (most == counts.end())
        return {};
    return soleGlaze(*std::ranges::find_if(
        pieces, [&](const Piece& piece) { return folded(soleGlaze(piece)) == most->first; }));
}

Result<GrowthRate> growthRateFor(const Book& book, const std::vector<Piece>& pieces) {
    const auto glaze = mainGlaze(pieces);
    if (glaze.empty())
        return publishedGrowthRate();
    const auto known = GlazeEvidence(book).of(glaze);
    return known ? Result<GrowthRate>(known->growth.rate()) : known.error();
}

Result<GrowthMarks> growthMarksOf(const BookReader& reader, FiringId firing) {
    const auto record = reader.whole(firing);
    if (!record)
        return record.error();
    const auto control = controlChannel(*record);
    if (!control)
        return GrowthMarks();
    const auto filed = reader.filedOffsets(record->kiln.id);
    if (!filed)
        return filed.error();
    const Curve curve = curveOf(*record, *control);
    const Temperature peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature)->temperature;
    const Probe* known = controlProbe(*record);
    const OffsetPrior offset =
        known ? knownOffset(*filed, firing, *known, peak).prior : newProbePrior(ThermocoupleType::K, peak);
    return growthMarksOf(record->firing.plan, curve, offset, peak);
}

Result<GrowthMarks> GlazeEvidence::marks(FiringId firing) {
    if (const auto known = m_marks.find(firing); known != m_marks.end())
        return known->second;
    auto marks = growthMarksOf(BookReader(*m_book), firing);
    if (marks)
        m_marks[firing] = *marks;
    return marks;
}

Result<GlazeKnowledge> GlazeEvidence::of(const std::string& glaze) {
    const std::string name = folded(glaze);
    if (const auto known = m_known.find(name); known != m_known.end())
        return known->second;
    FiringFilter filter;
    filter.glaze = glaze;
    const auto firings = BookReader(*m_book).firings(filter);
    if (!firings)
        return firings.error();
    std::vector<GrownFiring> grown;
    std::vector<SagAnswer> answers;
    for (const auto& firing : *firings) {
        const auto found = findingsOf(*m_book, firing.id, name);
        if (!found)
            return found.error();
        if (found->empty())
            continue;
        const auto marks = this->marks(firing.id);
        if (!marks)
            return marks.error();
        grown.push_back(grownFiring(*marks, *found));
        for (const auto& sag : found->sags)
            if (const auto depth = sagDepth_C(*marks, sag))
                answers.push_back({*depth, sag.seen == SagSight::yes});
    }
    return m_known[name] = {glazeGrowthOf(grown), visibleBand(answers)};
}

void GlazeEvidence::forget() {
    m_marks.clear();
    m_known.clear();
}

} // namespace ringhold
