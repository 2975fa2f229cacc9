#include "core/thermocouple/thermocouple.h"

#include "core/thermocouple/reference_function.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ringhold {

namespace {

constexpr double readableFromB_C = 42.14;

/// An emf may lie this far beyond the ends of the range: rounding in the sum with the cold junction's.
constexpr double roundingSlack_mV = 1e-9;

double emf_mV(ThermocoupleType type, double t_C) {
    const auto pieces = referencePieces(type);
    auto piece = pieces.begin();
    while (t_C > piece->high_C && std::next(piece) != pieces.end())
        ++piece;
    return evaluate(*piece, t_C).emf_mV;
}

/// The piece within which this emf arises. Emfs grow with temperature over the readable range.
const ReferencePiece& pieceOf(ThermocoupleType type, double target_mV) {
    const auto pieces = referencePieces(type);
    for (const auto& piece : pieces)
        if (target_mV <= evaluate(piece, piece.high_C).emf_mV)
            return piece;
    return pieces.back();
}

/// Newton's method inside a shrinking bracket, halving it wherever Newton would leave it. An emf outside the
/// bracket gives the nearer end.
double solve(const ReferencePiece& piece, double low_C, double high_C, double target_mV) {
    double t_C = std::midpoint(low_C, high_C);
    for (int i = 0; i < 100; ++i) {
        const auto here = evaluate(piece, t_C);
        const double over_mV = here.emf_mV - target_mV;
        (over_mV > 0 ? high_C : low_C) = t_C;
        double next_C = t_C - over_mV / here.slope_mV_per_C;
        if (!(next_C >= low_C && next_C <= high_C))
            next_C = std::midpoint(low_C, high_C);
        if (std::abs(next_C - t_C) < 1e-9)
            return next_C;
        t_C = next_C;
    }
    return t_C;
}

Error badInput(std::string what) {
    return {ErrorKind::badInput, std::move(what)};
}

std::string ofType(ThermocoupleType type) {
    return fmt::format("a type {} thermocouple", name(type));
}

Error notDefined(ThermocoupleType type, Temperature t) {
    if (std::isnan(t.celsius()))
        return badInput("the temperature is not a number");
    const auto range = definedRange(type);
    return badInput(fmt::format("{:g} °C is outside the range of {}, {:g} to {:g} °C", t.celsius(),
                                ofType(type), range.low.celsius(), range.high.celsius()));
}

Error notReadable(ThermocoupleType type, double mV, double low_mV, double high_mV) {
    if (std::isnan(mV))
        return badInput("the voltage is not a number");
    if (type == ThermocoupleType::B && mV < low_mV)
        return badInput(
            fmt::format("{:.6g} mV is too little for {}, which cannot tell temperatures below {:g} °C", mV,
                        ofType(type), readableFromB_C));
    return badInput(fmt::format("{:.6g} mV is outside the range of {}, {:.3f} to {:.3f} mV", mV, ofType(type),
                                low_mV, high_mV));
}

Result<Millivolts> coldJunctionEmf(ThermocoupleType type, Temperature coldJunction) {
    auto cold = emf(type, coldJunction);
    if (!cold)
        return badInput("cold junction: " + cold.error().what);
    return cold;
}

} // namespace

TemperatureRange definedRange(ThermocoupleType type) {
    const auto pieces = referencePieces(type);
    return {Temperature::fromCelsius(pieces.front().low_C), Temperature::fromCelsius(pieces.back().high_C)};
}

TemperatureRange readableRange(ThermocoupleType type) {
    auto range = definedRange(type);
    if (type == ThermocoupleType::B)
        range.low = Temperature::fromCelsius(readableFromB_C);
    return range;
}

Result<Millivolts> emf(ThermocoupleType type, Temperature temperature) {
    const auto range = definedRange(type);
    if (!(temperature >= range.low && temperature <= range.high))
        return notDefined(type, temperature);
    return Millivolts{emf_mV(type, temperature.celsius())};
}

Result<Temperature> temperature(ThermocoupleType type, Millivolts emf) {
    const auto range = readableRange(type);
    const double low_mV = emf_mV(type, range.low.celsius());
    const double high_mV = emf_mV(type, range.high.celsius());
    const double mV = emf.millivolts;
    if (!(mV >= low_mV - roundingSlack_mV && mV <= high_mV + roundingSlack_mV))
        return notReadable(type, mV, low_mV, high_mV);
    const auto& piece = pieceOf(type, mV);
    const double from_C = std::max(piece.low_C, range.low.celsius());
    return Temperature::fromCelsius(solve(piece, from_C, piece.high_C, mV));
}

Result<Temperature> measured(ThermocoupleType type, Millivolts meter, Temperature coldJunction) {
    const auto cold = coldJunctionEmf(type, coldJunction);
    if (!cold)
        return cold.error();
    auto hot = temperature(type, Millivolts{meter.millivolts + cold->millivolts});
    if (!hot && coldJunction.celsius() != 0)
        return badInput(fmt::format("{} ({:.6g} mV at the meter with its cold junction at {:g} °C)",
                                    hot.error().what, meter.millivolts, coldJunction.celsius()));
    return hot;
}

Result<Millivolts> atMeter(ThermocoupleType type, Temperature hot, Temperature coldJunction) {
    const auto cold = coldJunctionEmf(type, coldJunction);
    if (!cold)
        return cold.error();
    const auto full = emf(type, hot);
    if (!full)
        return full.error();
    return Millivolts{full->millivolts - cold->millivolts};
}

} // namespace ringhold
