// What is written down about the kiln itself: service, meters, and what is gone through before lighting it.
#pragma once

#include "core/firing/records.h"

namespace ringhold {

enum class ServiceId : std::int64_t {};
enum class MeterStandId : std::int64_t {};
enum class ChecklistItemId : std::int64_t {};

enum class ServiceKind { elements, probe, relay, other };

/// Something repaired, replaced or looked after.
struct ServiceEntry {
    ServiceId id{};
    KilnId kiln{};
    std::optional<ProbeId> probe; ///< that it was done to
    Instant at;
    ServiceKind kind = ServiceKind::other;
    std::string words;
    bool operator==(const ServiceEntry&) const = default;
};

enum class MeterUnit { kilowattHours, cubicMetres };

/// What the electricity or gas meter showed, read by hand during a firing.
struct MeterStand {
    MeterStandId id{};
    FiringId firing{};
    Instant at;
    double stand = 0; ///< at least 0
    MeterUnit unit = MeterUnit::kilowattHours;
    bool struck = false;
    bool operator==(const MeterStand&) const = default;
};

enum class ChecklistKind {
    caution, ///< one of the standing cautions
    own      ///< the potter's
};

/// One line of what is gone through before every firing.
struct ChecklistItem {
    ChecklistItemId id{};
    int position = 0; ///< in the list, from 0
    std::string words;
    ChecklistKind kind = ChecklistKind::own;
    bool operator==(const ChecklistItem&) const = default;
};

} // namespace ringhold
