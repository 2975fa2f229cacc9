// The enumerations of the records as the book writes them.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/kiln_records.h"
#include "core/firing/ware_records.h"

#include <optional>
#include <string_view>

namespace ringhold {

/// Of Fuel, Quantity, Crystals, WareFault, AlarmLevel, AlarmChange, SagSight, ServiceKind, MeterUnit and
/// ChecklistKind; instantiated for no others.
template <class Enum>
std::string_view bookText(Enum value);

/// Back again; nothing for a text that stands for none.
template <class Enum>
std::optional<Enum> fromBookText(std::string_view text);

} // namespace ringhold
