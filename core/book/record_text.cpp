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
constexpr auto names<Fuel> = std::array{Named<Fuel>{Fuel::electric, "electric"},
                                        Named<Fuel>{Fuel::gas, "gas"}, Named<Fuel>{Fuel::wood, "wood"}};
template <>
constexpr auto names<Quantity> = std::array{Named<Quantity>{Quantity::temperature, "temperature"},
                                            Named<Quantity>{Quantity::lineVolts, "line volts"},
                                            Named<Quantity>{Quantity::lineAmps, "line amps"},
                                            Named<Quantity>{Quantity::oxygenMillivolts, "oxygen millivolts"},
                                            Named<Quantity>{Quantity::duty, "duty"}};
template <>
constexpr auto names<Crystals> =
    std::array{Named<Crystals>{Crystals::none, "none"}, Named<Crystals>{Crystals::few, "few"},
               Named<Crystals>{Crystals::many, "many"}, Named<Crystals>{Crystals::covered, "covered"}};

template <>
constexpr auto names<WareFault> = std::array{Named<WareFault>{WareFault::crawled, "crawled"},
                                             Named<WareFault>{WareFault::pinholes, "pinholes"},
                                             Named<WareFault>{WareFault::noCrystals, "no crystals"},
                                             Named<WareFault>{WareFault::tooManySeeds, "too many seeds"},
                                             Named<WareFault>{WareFault::dunting, "dunting"},
                                             Named<WareFault>{WareFault::stuck, "stuck"},
                                             Named<WareFault>{WareFault::dull, "dull"}};
template <>
constexpr auto names<AlarmLevel> = std::array{Named<AlarmLevel>{AlarmLevel::notice, "notice"},
                                              Named<AlarmLevel>{AlarmLevel::warning, "warning"},
                                              Named<AlarmLevel>{AlarmLevel::urgent, "urgent"}};
template <>
constexpr auto names<AlarmChange> = std::array{Named<AlarmChange>{AlarmChange::raised, "raised"},
                                               Named<AlarmChange>{AlarmChange::worsened, "worsened"},
                                               Named<AlarmChange>{AlarmChange::acknowledged, "acknowledged"},
                                               Named<AlarmChange>{AlarmChange::ended, "ended"}};
template <>
constexpr auto names<SagSight> =
    std::array{Named<SagSight>{SagSight::yes, "yes"}, Named<SagSight>{SagSight::no, "no"},
               Named<SagSight>{SagSight::unsure, "unsure"}};
template <>
constexpr auto names<ServiceKind> = std::array{
    Named<ServiceKind>{ServiceKind::elements, "elements"}, Named<ServiceKind>{ServiceKind::probe, "probe"},
    Named<ServiceKind>{ServiceKind::relay, "relay"}, Named<ServiceKind>{ServiceKind::other, "other"}};
template <>
constexpr auto names<MeterUnit> = std::array{Named<MeterUnit>{MeterUnit::kilowattHours, "kWh"},
                                             Named<MeterUnit>{MeterUnit::cubicMetres, "m3"}};
template <>
constexpr auto names<ChecklistKind> = std::array{Named<ChecklistKind>{ChecklistKind::caution, "caution"},
                                                 Named<ChecklistKind>{ChecklistKind::own, "own"}};

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
