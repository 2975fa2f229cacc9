#include "app/verbs/csv_arguments.h"
#include "app/verbs/forecast_output.h"
#include "app/verbs/look_argument.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Heat work so far, and when each cone will be down.
class HeatworkVerb final : public Verb {
  public:
    std::string name() const override { return "heatwork"; }
    std::string summary() const override { return "What cones feel, and when they will be down"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<WatchedPack> pack() const;
    Result<std::vector<WatchedLook>> looks(bool absolute) const;
    Result<Forecast> forecast(const CsvReadings& readings) const;
    Result<Forecast> ahead(const ConeForecaster& forecaster) const;
    Error inFile(Error error) const;

    CsvArguments m_csv;
    std::vector<std::string> m_cones{"8", "9", "10"};
    std::string m_coneType = "self-supporting";
    std::string m_probeType = "K";
    std::vector<std::string> m_looks;
    std::optional<double> m_rate_C_per_h;
    std::optional<double> m_top_C;
    bool m_json = false;
};

void HeatworkVerb::declare(CLI::App& command) {
    m_csv.declare(command);
    command.add_option("--cones", m_cones, "The pack: 8,9,10 unless said otherwise")
        ->delimiter(',')
        ->allow_extra_args(false);
    command.add_option("--cone-type", m_coneType, "self-supporting, large, small ...");
    command.add_option("--type", m_probeType, "The probe's thermocouple type (K)");
    command.add_option("--look", m_looks, "A look: CONE@TIME=HOUR; may be given again")
        ->allow_extra_args(false);
    addNumber(command, "--rate", m_rate_C_per_h, "How the kiln goes on, °C/h; else as in the last 20 min");
    addNumber(command, "--top", m_top_C, "Where the climb ends and a soak begins, °C");
    addJson(command, m_json);
}

Result<WatchedPack> HeatworkVerb::pack() const {
    const auto type = coneTypeNamed(m_coneType);
    if (!type)
        return Error{ErrorKind::badInput, "there is no cone type \"" + m_coneType + "\""};
    const auto probe = thermocoupleTypeNamed(m_probeType);
    if (!probe)
        return Error{ErrorKind::badInput, "there is no thermocouple type \"" + m_probeType + "\""};
    WatchedPack pack{.type = *type, .cones = m_cones, .prior = {}};
    const Cone* first = m_cones.empty() ? nullptr : ConeTable::builtIn().find(m_cones.front(), *type);
    if (first)
        pack.prior = newProbePrior(*probe, first->law.endPoint(Rate::fromCelsiusPerHour(60)));
    return pack; // an unknown cone is the forecaster's to refuse
}

Result<std::vector<WatchedLook>> HeatworkVerb::looks(bool absolute) const {
    if (!absolute && !m_looks.empty())
        return inFile({ErrorKind::badInput, "its times have no date, so a look has no place; give --began"});
    std::vector<WatchedLook> all;
    for (const auto& text : m_looks) {
        auto look = parseLook(text, m_csv.zone());
        if (!look)
            return look.error();
        all.push_back(std::move(*look));
    }
    return all;
}

Result<Forecast> HeatworkVerb::ahead(const ConeForecaster& forecaster) const {
    auto shown = climbShownAtEnd(forecaster.curve()); // the last 20 min, whatever they held
    if (!shown)
        return forecaster.forecast();
    if (m_rate_C_per_h) {
        shown->rate = Rate::fromCelsiusPerHour(*m_rate_C_per_h);
        shown->rateSd = {};
    }
    std::optional<Temperature> top;
    if (m_top_C)
        top = Temperature::fromCelsius(*m_top_C);
    return forecaster.forecast(climbOn(shown->at, shown->temperature, shown->rate, aheadSd(*shown), top));
}

Result<Forecast> HeatworkVerb::forecast(const CsvReadings& readings) const {
    auto watched = pack();
    if (!watched)
        return watched.error();
    auto forecaster = ConeForecaster::make({std::move(*watched)});
    if (!forecaster)
        return forecaster.error();
    auto seen = looks(readings.absolute);
    if (!seen)
        return seen.error();
    for (const auto& point : readings.curve())
        forecaster->add(point);
    if (const auto status = forecaster->setLooks(std::move(*seen)); !status)
        return inFile(status.error());
    return ahead(*forecaster);
}

Error HeatworkVerb::inFile(Error error) const {
    error.file = m_csv.file();
    return error;
}

Status HeatworkVerb::run(Console& console) {
    const auto readings = m_csv.read();
    if (!readings)
        return readings.error();
    const auto found = forecast(*readings);
    if (!found)
        return found.error();
    if (m_json)
        print(console.out, toJson(*found));
    else
        describe(console.out, *found, readings->absolute);
    return {};
}

} // namespace

std::unique_ptr<Verb> makeHeatworkVerb() {
    return std::make_unique<HeatworkVerb>();
}

} // namespace ringhold
