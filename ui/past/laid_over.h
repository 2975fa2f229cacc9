// Firings laid over each other: where each begins, and whether they may be compared.
#pragma once

#include "ui/past/opened_firing.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

namespace ringhold {

/// What all of them have at the same place.
enum class Alignment { start, coneDown, growthHold };

/// As many as can still be told apart.
inline constexpr int mostLaidOver = 20;

struct LaidFiring {
    std::shared_ptr<const OpenedFiring> firing;
    std::optional<Instant> zero; ///< where its hours count from; nothing: it cannot be aligned so
    bool comparable = true;      ///< by the same probe as the first of them, or both offsets are known
};

/// In the order given. The first one's probe is what the others are measured by; where no probe is named,
/// nobody knows.
std::vector<LaidFiring> layOver(std::vector<std::shared_ptr<const OpenedFiring>> firings,
                                Alignment alignment);

/// "A" to "T": how they are called in plot and table.
QString layName(std::size_t index);

/// What cannot be aligned or compared, in a sentence or two; empty when all is well.
QString layRemarks(const std::vector<LaidFiring>& laid, Alignment alignment);

} // namespace ringhold
