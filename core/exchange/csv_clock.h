// The time column of a CSV, cell by cell.
#pragma once

#include "core/exchange/csv_options.h"
#include "core/exchange/csv_vocabulary.h"
#include "core/exchange/stamp.h"

#include <optional>
#include <string_view>

namespace ringhold {

/// Turns the cells of one time column into instants; the first cell decides whether they are dates or count
/// from the beginning. Elapsed times without CsvOptions::began count from 1970-01-01T00:00Z.
class CsvClock {
  public:
    /// badInput when the column cannot be read as a whole: no date, no unit, an unknown zone.
    static Result<CsvClock> make(const TimeColumn& column, std::string_view firstCell,
                                 const CsvOptions& options);

    /// False when only differences between its instants mean anything.
    bool isAbsolute() const { return !m_elapsed || m_began; }

    /// badInput for a cell that is no such time. In an hour that the clocks repeat the earlier instant is
    /// meant, but the later where the earlier would not be after `previous`.
    Result<Instant> read(std::string_view cell, std::optional<Instant> previous);

  private:
    CsvClock(bool elapsed, Duration unit, ColonForm colons, std::optional<Instant> began)
        : m_elapsed(elapsed), m_unit(unit), m_colons(colons), m_began(began) {}

    Result<Instant> readStamp(std::string_view cell, std::optional<Instant> previous);
    Result<Instant> readCivil(std::string_view cell, Instant civil, std::optional<Instant> previous);
    Result<Instant> readElapsed(std::string_view cell) const;

    bool m_elapsed;
    Duration m_unit; ///< 0 when only h:mm:ss can be read
    ColonForm m_colons;
    std::optional<Instant> m_began;
    std::optional<CivilZone> m_zone;
    std::string m_zoneName;
};

/// "1:02:03.5", and by the form "1:02" or "62:03", as a duration; nothing for any other text.
std::optional<Duration> parseColonTime(std::string_view text, ColonForm form);

} // namespace ringhold
