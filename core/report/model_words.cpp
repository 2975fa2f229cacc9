#include "core/report/model_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr std::size_t ratesThatTest = 3;

/// Rounded up to a whole degree: "within" must hold.
std::string within(TemperatureDifference residual, const WordStyle& style) {
    const double shown =
        style.scale == TemperatureScale::fahrenheit ? residual.fahrenheit() : residual.celsius();
    return figure(std::max(1.0, std::ceil(shown - 1e-6)), 0) + " " + unitWords(style);
}

/// "15, 60 and 150"
std::string listed(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i)
        text += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return text;
}

double shownRate(Rate rate, const WordStyle& style) {
    return style.scale == TemperatureScale::fahrenheit ? rate.fahrenheitPerHour() : rate.celsiusPerHour();
}

std::string ratesOf(const Cone& cone, const WordStyle& style) {
    std::vector<std::string> rates;
    for (const auto& published : cone.published)
        rates.push_back(figure(shownRate(published.point.climb, style), 0));
    return listed(rates) + " " + unitWords(style) + "/h";
}

bool isTested(const Cone& cone) {
    return cone.activation == ActivationSource::ownRates && cone.published.size() >= ratesThatTest;
}

std::string untestedWords(const Cone& cone, const WordStyle& style) {
    const std::string lead = cone.published.size() == 1 ? "the chart gives " + ratesOf(cone, style) + " alone"
                                                        : "the chart gives " + ratesOf(cone, style) + " only";
    return lead + (cone.activation == ActivationSource::sibling
                       ? "; other rates follow the self-supporting cone, untested"
                       : "; nothing tests the model");
}

} // namespace

std::string modelFitWords(const Cone& cone, const WordStyle& style) {
    return fmt::format("cone {}: ", cone.name) +
           (isTested(cone) ? "the model is within " + within(cone.worstResidual(), style) +
                                 " of the chart at " + ratesOf(cone, style)
                           : untestedWords(cone, style));
}

std::string modelFitWords(const std::vector<std::string>& cones, ConeType type, const WordStyle& style) {
    std::vector<std::string> tested;
    std::string untested;
    TemperatureDifference worst;
    std::string rates;
    for (const auto& name : cones) {
        const Cone* cone = ConeTable::builtIn().find(name, type);
        if (cone && isTested(*cone)) {
            tested.push_back(name);
            worst = std::max(worst, cone->worstResidual());
            rates = figure(shownRate(cone->published.front().point.climb, style), 0) + " to " +
                    figure(shownRate(cone->published.back().point.climb, style), 0) + " " + unitWords(style) +
                    "/h";
        } else if (cone) {
            untested += " Cone " + name + ": " + untestedWords(*cone, style) + ".";
        }
    }
    if (tested.empty())
        return untested.empty() ? untested : untested.substr(1);
    return "The model is within " + within(worst, style) + " of the chart for cone" +
           (tested.size() > 1 ? "s " : " ") + listed(tested) + ", at " + rates + "." + untested;
}

} // namespace ringhold
