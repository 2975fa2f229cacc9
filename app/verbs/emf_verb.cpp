#include "app/verbs/options.h"
#include "app/verbs/output.h"
#include "app/verbs/verb_list.h"
#include "core/thermocouple/thermocouple.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace ringhold {

namespace {

/// Thermocouple volts to temperature, or back.
class EmfVerb final : public Verb {
  public:
    std::string name() const override { return "emf"; }
    std::string summary() const override { return "Thermocouple millivolts to temperature, or back"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    std::string m_type;
    std::optional<double> m_celsius;
    std::optional<double> m_millivolts;
    double m_cold_C = 0;
    bool m_json = false;
};

void EmfVerb::declare(CLI::App& command) {
    command.add_option("--type", m_type, "B, E, J, K, N, R, S or T")->required();
    auto* given = command.add_option_group("given", "One of these");
    addNumber(*given, "--celsius", m_celsius, "Temperature of the hot end, °C");
    addNumber(*given, "--millivolts", m_millivolts, "What the meter reads");
    given->require_option(1);
    addNumber(command, "--cold", m_cold_C, "Temperature of the meter's terminals, °C (0)");
    addJson(command, m_json);
}

Status EmfVerb::run(Console& console) {
    const auto type = thermocoupleTypeNamed(m_type);
    if (!type)
        return Error{ErrorKind::badInput,
                     "there is no thermocouple type \"" + m_type + "\": B E J K N R S T"};
    const auto cold = Temperature::fromCelsius(m_cold_C);
    if (m_celsius) {
        const auto read = atMeter(*type, Temperature::fromCelsius(*m_celsius), cold);
        if (!read)
            return read.error();
        m_millivolts = read->millivolts;
    } else {
        const auto hot = measured(*type, Millivolts{*m_millivolts}, cold);
        if (!hot)
            return hot.error();
        m_celsius = hot->celsius();
    }
    if (m_json)
        print(console.out, {{"type", std::string(ringhold::name(*type))},
                            {"celsius", rounded(m_celsius, 4)},
                            {"millivolts", rounded(m_millivolts, 6)},
                            {"cold_C", rounded(m_cold_C, 4)}});
    else
        console.out << fmt::format(
            "type {}: {:.2f} °C reads {:.4f} mV on a meter whose terminals are at {:.1f} °C\n",
            ringhold::name(*type), *m_celsius, *m_millivolts, m_cold_C);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeEmfVerb() {
    return std::make_unique<EmfVerb>();
}

} // namespace ringhold
