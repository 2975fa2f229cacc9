#include "core/book/record_text.h"

#include <array>

namespace ringhold {

namespace {

template <class Enum>
struct Named {
    Enum value;
    std::string_view text;
};

constexpr std::array fuels{Named<Fuel>{Fuel::electric, "electric"}, Named<Fuel>{Fuel::gas, "gas"},
                           Named<Fuel>{Fuel::wood, "wood"}};
constexpr std::array quantities{Named<Quantity>{Quantity::temperature, "temperature"},
                                Named<Quantity>{Quantity::lineVolts, "line volts"},
                                Named<Quantity>{Quantity::lineAmps, "line amps"},
                                Named<Quantity>{Quantity::oxygenMillivolts, "oxygen millivolts"},
                                Named<Quantity>{Quantity::duty, "duty"}};
constexpr std::array crystalAmounts{
    Named<Crystals>{Crystals::none, "none"}, Named<Crystals>{Crystals::few, "few"},
    Named<Crystals>{Crystals::many, "many"}, Named<Crystals>{Crystals::covered, "covered"}};

constexpr std::array wareFaults{Named<WareFault>{WareFault::crawled, "crawled"},
                                Named<WareFault>{WareFault::pinholes, "pinholes"},
                                Named<WareFault>{WareFault::noCrystals, "no crystals"},
                                Named<WareFault>{WareFault::tooManySeeds, "too many seeds"},
                                Named<WareFault>{WareFault::dunting, "dunting"},
                                Named<WareFault>{WareFault::stuck, "stuck"},
                                Named<WareFault>{WareFault::dull, "dull"}};
constexpr std::array alarmLevels{Named<AlarmLevel>{AlarmLevel::notice, "notice"},
                                 Named<AlarmLevel>{AlarmLevel::warning, "warning"},
                                 Named<AlarmLevel>{AlarmLevel::urgent, "urgent"}};
constexpr std::array alarmChanges{Named<AlarmChange>{AlarmChange::raised, "raised"},
                                  Named<AlarmChange>{AlarmChange::worsened, "worsened"},
                                  Named<AlarmChange>{AlarmChange::acknowledged, "acknowledged"},
                                  Named<AlarmChange>{AlarmChange::ended, "ended"}};
constexpr std::array sagSights{Named<SagSight>{SagSight::yes, "yes"}, Named<SagSight>{SagSight::no, "no"},
                               Named<SagSight>{SagSight::unsure, "unsure"}};
constexpr std::array serviceKinds{
    Named<ServiceKind>{ServiceKind::elements, "elements"}, Named<ServiceKind>{ServiceKind::probe, "probe"},
    Named<ServiceKind>{ServiceKind::relay, "relay"}, Named<ServiceKind>{ServiceKind::other, "other"}};
constexpr std::array meterUnits{Named<MeterUnit>{MeterUnit::kilowattHours, "kWh"},
                                Named<MeterUnit>{MeterUnit::cubicMetres, "m3"}};
constexpr std::array checklistKinds{Named<ChecklistKind>{ChecklistKind::caution, "caution"},
                                    Named<ChecklistKind>{ChecklistKind::own, "own"}};

template <class Enum, std::size_t n>
std::string_view textOf(const std::array<Named<Enum>, n>& names, Enum value) {
    for (const auto& named : names)
        if (named.value == value)
            return named.text;
    return {};
}

template <class Enum, std::size_t n>
std::optional<Enum> valueOf(const std::array<Named<Enum>, n>& names, std::string_view text) {
    for (const auto& named : names)
        if (named.text == text)
            return named.value;
    return std::nullopt;
}

} // namespace

std::string_view bookText(Fuel fuel) {
    return textOf(fuels, fuel);
}
std::string_view bookText(Quantity quantity) {
    return textOf(quantities, quantity);
}
std::string_view bookText(Crystals crystals) {
    return textOf(crystalAmounts, crystals);
}
std::string_view bookText(WareFault fault) {
    return textOf(wareFaults, fault);
}
std::string_view bookText(AlarmLevel level) {
    return textOf(alarmLevels, level);
}
std::string_view bookText(AlarmChange change) {
    return textOf(alarmChanges, change);
}
std::string_view bookText(SagSight seen) {
    return textOf(sagSights, seen);
}
std::string_view bookText(ServiceKind kind) {
    return textOf(serviceKinds, kind);
}
std::string_view bookText(MeterUnit unit) {
    return textOf(meterUnits, unit);
}
std::string_view bookText(ChecklistKind kind) {
    return textOf(checklistKinds, kind);
}

std::optional<Fuel> fuelOf(std::string_view text) {
    return valueOf(fuels, text);
}
std::optional<Quantity> quantityOf(std::string_view text) {
    return valueOf(quantities, text);
}
std::optional<Crystals> crystalsOf(std::string_view text) {
    return valueOf(crystalAmounts, text);
}
std::optional<WareFault> wareFaultOf(std::string_view text) {
    return valueOf(wareFaults, text);
}
std::optional<AlarmLevel> alarmLevelOf(std::string_view text) {
    return valueOf(alarmLevels, text);
}
std::optional<AlarmChange> alarmChangeOf(std::string_view text) {
    return valueOf(alarmChanges, text);
}
std::optional<SagSight> sagSightOf(std::string_view text) {
    return valueOf(sagSights, text);
}
std::optional<ServiceKind> serviceKindOf(std::string_view text) {
    return valueOf(serviceKinds, text);
}
std::optional<MeterUnit> meterUnitOf(std::string_view text) {
    return valueOf(meterUnits, text);
}
std::optional<ChecklistKind> checklistKindOf(std::string_view text) {
    return valueOf(checklistKinds, text);
}

} // namespace ringhold
