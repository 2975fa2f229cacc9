// What looks would do to the forecast, and what speaks against them, in words.
#pragma once

#include "core/cones/forecast.h"
#include "core/firing/records.h"
#include "core/report/words.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace ringhold {

/// The forecast as it is, and as it would be with the looks asked about.
struct LookPreview {
    Forecast without;
    Forecast with;
};

/// The cone of a pack whose end matters next: the firing cone when it is in the pack, else the middle one;
/// the first after it that is not down, when it is. An index into the pack's cones.
std::size_t toldCone(const Pack& pack, const PackForecast& forecast,
                     const std::optional<std::string>& firingCone);

/// "cone 10 down 18:17, 18:11 to 18:25"; "cone 10 not down before 18:11", "cone 10 is down" and the like.
QString downWords(const ConeForecast& cone, const WordStyle& style);

/// Two lines: "With this look: cone 10 down 18:17, 18:11 to 18:25.", "It was 18:19, 18:09 to 18:32."
QString effectWords(const ConeForecast& without, const ConeForecast& with, std::size_t looks,
                    const WordStyle& style);

/// What the potter should look at once more before writing `added`: a cone that would have to straighten, a
/// look that is probably wrong by all the others (1 in 2 or more). `earlier` are the looks that count
/// already, packs are in the order of the forecasts.
QStringList doubtsAbout(const std::vector<Look>& added, const std::vector<Look>& earlier,
                        const std::vector<Pack>& packs, const LookPreview& preview, const WordStyle& style);

} // namespace ringhold
