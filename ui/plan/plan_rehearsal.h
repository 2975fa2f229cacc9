// A plan rehearsed on a kiln of the book, as it was in its past firings.
#pragma once

#include "core/base/result.h"
#include "core/cones/offset_prior.h"
#include "core/firing/records.h"
#include "core/learn/rehearsal.h"

#include <QStringList>

#include <filesystem>
#include <memory>

namespace ringhold {

class BookReader;
class Preferences;

/// Fewer firings with their power do not make a rehearsal: one may have been any kind of day.
inline constexpr int firingsToRehearse = 2;

struct RehearsalWish {
    Plan plan; ///< passes check()
    Kiln kiln;
    Volts line{230};
    double more_kg = 0; ///< ware and furniture beyond what the kiln usually has
    OffsetPrior offset;
};

struct RehearsalTold {
    std::shared_ptr<const KilnFit> fit; ///< to be handed in again for the same kiln; null without firings
    int firings = 0;                    ///< that have their power
    std::optional<Rehearsal> rehearsal; ///< nothing while there are too few
};

/// The kiln's constants from the newest of its ended firings that have their power, at the most six; null
/// where none has. As the book does not know loads, each firing counts as having had the usual one. Takes
/// seconds: not for the window's thread.
Result<std::shared_ptr<const KilnFit>> fitFromBook(const BookReader& reader, const Kiln& kiln);

/// Opens the book for itself, so that it may run in any thread. `known` spares it the fit.
Result<RehearsalTold> rehearseFromBook(const std::filesystem::path& book, const RehearsalWish& wish,
                                       std::shared_ptr<const KilnFit> known);

/// "Ends 14 h 20 after lighting (13 h 50 to 15 h 05) · 71 kWh (66 to 77) · costs 17.75 (16.50 to 19.25)"
QString rehearsalWords(const Rehearsal& rehearsal, const Kiln& kiln, const Preferences& preferences);
/// Where it falls behind or gets stuck, a sentence each.
QStringList rehearsalWarnings(const Plan& plan, const Rehearsal& rehearsal, const Preferences& preferences);
/// "3 h 31 (3 h 20 to 3 h 50)"; "never" and the like where runs do not come there.
QString hoursWords(const RehearsedRange& hours, const Preferences& preferences);
/// "12 (9 to 15)", with that many decimals.
QString rangeWords(const RehearsedRange& range, int decimals = 0);

} // namespace ringhold
