#include "core/watch/cone_due.h"

#include <algorithm>

namespace ringhold {

namespace {

/// The newest look at any cone of the pack: whoever saw one, saw all.
std::optional<Instant> lastLook(const std::vector<Look>& looks) {
    std::optional<Instant> last;
    for (const auto& look : looks)
        if (!look.struck && !look.cold && (!last || look.at > *last))
            last = look.at;
    return last;
}

bool seenDown(const ConeAwaited& awaited) {
    return std::ranges::any_of(awaited.looks, [&](const Look& look) {
        return !look.struck && look.cone == awaited.cone.cone && look.hour >= 6;
    });
}

} // namespace

std::optional<AlarmFinding> coneDue(const ConeAwaited& awaited, Instant now, const WordStyle& style,
                                    const ConeDueRules& rules) {
    const auto& down = awaited.cone.down;
    if (seenDown(awaited) || !down.p05)
        return std::nullopt;
    const std::string name = "cone " + awaited.cone.cone;
    const auto look = lastLook(awaited.looks);
    if (down.median && now >= *down.median) {
        const bool believed = look && *look >= *down.median && now - *look < rules.lookCounts;
        const std::string words =
            "By the heat work " + name + " was down at " + whenWords(down, style) +
            ", more likely than not. " +
            (look ? "Last look " + clockWords(*look, style) + "." : "Nobody has looked.");
        return believed ? AlarmFinding{AlarmCause::coneDue, AlarmLevel::warning, words}
                        : AlarmFinding{AlarmCause::coneUnseen, AlarmLevel::urgent, words + " Look now."};
    }
    if (now >= *down.p05 - rules.before)
        return AlarmFinding{AlarmCause::coneDue, AlarmLevel::warning,
                            name + " is due at " + whenWords(down, style) + ". Be at the spyhole."};
    return std::nullopt;
}

} // namespace ringhold
