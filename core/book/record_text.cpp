#include "core/book/record_text.h"

#include <array>

namespace ringhold {

namespace {

template <class Enum>
struct Named {
    Enum value;
    std::string_view text;
};

/// Each value with its text.
template <class Enum>
constexpr std::array<Named<Enum>, 0> names{};

template <>
constexpr auto names<Fuel> =
    std::to_array<Named<Fuel>>({{Fuel::electric, "electric"}, {Fuel::gas, "gas"}, {Fuel::wood, "wood"}});
template <>
constexpr auto
    names<Quantity> = std::to_array<Named<Quantity>>({{Quantity::temperature, "temperature"},
                                                      {Quantity::lineVolts, "line volts"},
                                                      {Quantity::lineAmps, "line amps"},
                                                      {Quantity::oxygenMillivolts, "oxygen millivolts"},
                                                      {Quantity::duty, "duty"}});
template <>
constexpr auto names<Crystals> = std::to_array<Named<Crystals>>({{Crystals::none, "none"},
                                                                 {Crystals::few, "few"},
                                                                 {Crystals::many, "many"},
                                                                 {Crystals::covered, "covered"}});

template <>
constexpr auto
    names<WareFault> = std::to_array<Named<WareFault>>({{WareFault::crawled, "crawled"},
                                                        {WareFault::pinholes, "pinholes"},
                                                        {WareFault::noCrystals, "no crystals"},
                                                        {WareFault::tooManySeeds, "too many seeds"},
                                                        {WareFault::dunting, "dunting"},
                                                        {WareFault::stuck, "stuck"},
                                                        {WareFault::dull, "dull"}});
template <>
constexpr auto names<AlarmLevel> = std::to_array<Named<AlarmLevel>>({{AlarmLevel::notice, "notice"},
                                                                     {AlarmLevel::warning, "warning"},
                                                                     {AlarmLevel::urgent, "urgent"}});
template <>
constexpr auto
    names<AlarmChange> = std::to_array<Named<AlarmChange>>({{AlarmChange::raised, "raised"},
                                                            {AlarmChange::worsened, "worsened"},
                                                            {AlarmChange::acknowledged, "acknowledged"},
                                                            {AlarmChange::ended, "ended"}});
template <>
constexpr auto names<SagSight> = std::to_array<Named<SagSight>>({{SagSight::yes, "yes"},
                                                                 {SagSight::no, "no"},
                                                                 {SagSight::unsure, "unsure"}});
template <>
constexpr auto names<ServiceKind> = std::to_array<Named<ServiceKind>>({{ServiceKind::elements, "elements"},
                                                                       {ServiceKind::probe, "probe"},
                                                                       {ServiceKind::relay, "relay"},
                                                                       {ServiceKind::other, "other"}});
template <>
constexpr auto names<MeterUnit> = std::to_array<Named<MeterUnit>>({{MeterUnit::kilowattHours, "kWh"},
                                                                   {MeterUnit::cubicMetres, "m3"}});
template <>
constexpr auto names<ChecklistKind> =
    std::to_array<Named<ChecklistKind>>({{ChecklistKind::caution, "caution"}, {ChecklistKind::own, "own"}});

} // namespace

template <class Enum>
std::string_view bookText(Enum value) {
    for (const auto& named : names<Enum>)
        if (named.value == value)
            return named.text;
    return {};
}

template <class Enum>
std::optional<Enum> fromBookText(std::string_view text) {
    for (const auto& named : names<Enum>)
        if (named.text == text)
            return named.value;
    return std::nullopt;
}

template std::string_view bookText(Fuel);
template std::optional<Fuel> fromBookText(std::string_view);
template std::string_view bookText(Quantity);
template std::optional<Quantity> fromBookText(std::string_view);
template std::string_view bookText(Crystals);
template std::optional<Crystals> fromBookText(std::string_view);
template std::string_view bookText(WareFault);
template std::optional<WareFault> fromBookText(std::string_view);
template std::string_view bookText(AlarmLevel);
template std::optional<AlarmLevel> fromBookText(std::string_view);
template std::string_view bookText(AlarmChange);
template std::optional<AlarmChange> fromBookText(std::string_view);
template std::string_view bookText(SagSight);
template std::optional<SagSight> fromBookText(std::string_view);
template std::string_view bookText(ServiceKind);
template std::optional<ServiceKind> fromBookText(std::string_view);
template std::string_view bookText(MeterUnit);
template std::optional<MeterUnit> fromBookText(std::string_view);
template std::string_view bookText(ChecklistKind);
template std::optional<ChecklistKind> fromBookText(std::string_view);

} // namespace ringhold
