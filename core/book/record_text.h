// The enumerations of the records as the book writes them.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/kiln_records.h"
#include "core/firing/ware_records.h"

#include <optional>
#include <string_view>

namespace ringhold {

std::string_view bookText(Fuel fuel);
std::string_view bookText(Quantity quantity);
std::string_view bookText(Crystals crystals);
std::string_view bookText(WareFault fault);
std::string_view bookText(AlarmLevel level);
std::string_view bookText(AlarmChange change);
std::string_view bookText(SagSight seen);
std::string_view bookText(ServiceKind kind);
std::string_view bookText(MeterUnit unit);
std::string_view bookText(ChecklistKind kind);

/// Back again; nothing for a text that stands for none.
std::optional<Fuel> fuelOf(std::string_view text);
std::optional<Quantity> quantityOf(std::string_view text);
std::optional<Crystals> crystalsOf(std::string_view text);
std::optional<WareFault> wareFaultOf(std::string_view text);
std::optional<AlarmLevel> alarmLevelOf(std::string_view text);
std::optional<AlarmChange> alarmChangeOf(std::string_view text);
std::optional<SagSight> sagSightOf(std::string_view text);
std::optional<ServiceKind> serviceKindOf(std::string_view text);
std::optional<MeterUnit> meterUnitOf(std::string_view text);
std::optional<ChecklistKind> checklistKindOf(std::string_view text);

} // namespace ringhold
