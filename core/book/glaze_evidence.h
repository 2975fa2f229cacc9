// What the book's pieces tell of a glaze: measured crystals with the curves that grew them, and which
// excursions were to be seen.
#pragma once

#include "core/base/result.h"
#include "core/book/reader.h"
#include "core/learn/glaze_growth.h"
#include "core/learn/growth_marks.h"
#include "core/learn/sag_visibility.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// What a past firing wrote into its crystals, by the control probe with the offset known of it. Reads the
/// whole firing.
Result<GrowthMarks> growthMarksOf(const BookReader& reader, FiringId firing);

/// What is known of one glaze.
struct GlazeKnowledge {
    GlazeGrowth growth;
    VisibleBand visible;
};

/// Reads whole firings where something was measured or answered, and keeps what it found until forget(). The
/// book outlives it.
class GlazeEvidence {
  public:
    explicit GlazeEvidence(const Book& book) : m_book(&book) {}

    /// Of pieces that carry this glaze alone; upper and lower case of unaccented letters are the same.
    Result<GlazeKnowledge> of(const std::string& glaze);
    Result<GrowthMarks> marks(FiringId firing);
    void forget();

  private:
    const Book* m_book;
    std::map<FiringId, GrowthMarks> m_marks;
    std::map<std::string, GlazeKnowledge> m_known;
};

/// The glaze that most of the pieces carry alone, as the first of them writes it; empty where none does.
std::string mainGlaze(const std::vector<Piece>& pieces);

/// By which rate a firing's crystal is drawn: that of the glaze that most of its pieces carry alone, once its
/// crystals told it, else the published range.
Result<GrowthRate> growthRateFor(const Book& book, const std::vector<Piece>& pieces);

/// The glaze of a piece that carries one alone; empty for none or several.
std::string soleGlaze(const Piece& piece);

} // namespace ringhold
