#include "app/verbs/csv_arguments.h"
#include "app/verbs/judgement_output.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Finds and judges the holds of a curve.
class HoldsVerb final : public Verb {
  public:
    std::string name() const override { return "holds"; }
    std::string summary() const override { return "Judge the holds of a curve"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    CsvArguments m_csv;
    double m_target_C = 0;
    double m_band_C = 0;
    bool m_json = false;
};

void HoldsVerb::declare(CLI::App& command) {
    m_csv.declare(command);
    addNumber(command, "--target", m_target_C, "What was to be held, °C")->required();
    addNumber(command, "--band", m_band_C, "Half width of the band, °C")->required();
    addJson(command, m_json);
}

Status HoldsVerb::run(Console& console) {
    if (m_band_C <= 0)
        return Error{ErrorKind::badInput, "--band must be above 0"};
    const auto readings = m_csv.read();
    if (!readings)
        return readings.error();
    const HoldBand band{Temperature::fromCelsius(m_target_C), TemperatureDifference::fromCelsius(m_band_C)};
    const auto holds = findHolds(readings->curve(), band);
    if (m_json)
        print(console.out, {{"holds", toJson(holds)}});
    else
        describe(console.out, holds, band, readings->absolute);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeHoldsVerb() {
    return std::make_unique<HoldsVerb>();
}

} // namespace ringhold
