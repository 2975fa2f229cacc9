#include "app/verbs/csv_arguments.h"
#include "app/verbs/judgement_output.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Counts the growth rings that a curve drew.
class RingsVerb final : public Verb {
  public:
    std::string name() const override { return "rings"; }
    std::string summary() const override { return "Count the growth rings that a curve drew"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    CsvArguments m_csv;
    double m_high_C = 0;
    double m_low_C = 0;
    bool m_json = false;
};

void RingsVerb::declare(CLI::App& command) {
    m_csv.declare(command);
    addNumber(command, "--high", m_high_C, "The upper of the two temperatures, °C")->required();
    addNumber(command, "--low", m_low_C, "The lower one, °C")->required();
    addJson(command, m_json);
}

Status RingsVerb::run(Console& console) {
    if (m_high_C <= m_low_C)
        return Error{ErrorKind::badInput, "--high must be above --low"};
    const auto readings = m_csv.read();
    if (!readings)
        return readings.error();
    const auto rings = countRings(readings->curve(),
                                  {Temperature::fromCelsius(m_high_C), Temperature::fromCelsius(m_low_C)});
    if (m_json)
        print(console.out, {{"count", rings.size()}, {"rings", toJson(rings)}});
    else
        describe(console.out, rings, readings->absolute);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeRingsVerb() {
    return std::make_unique<RingsVerb>();
}

} // namespace ringhold
