#include "core/learn/kiln_run.h"

namespace ringhold {

namespace {

constexpr double stefanBoltzmann_W_per_m2K4 = 5.670374419e-8;

double radiated(double area_m2, double celsius, double around_C) {
    const auto fourth = [](double degrees) {
        const double square = (degrees + Temperature::zeroCelsius_K) * (degrees + Temperature::zeroCelsius_K);
        return square * square;
    };
    return area_m2 * stefanBoltzmann_W_per_m2K4 * (fourth(celsius) - fourth(around_C));
}

} // namespace

KilnRun::KilnRun(const KilnConstants& constants, double chamber_C, double brick_C)
    : m_kiln(constants), m_around(constants.surroundings.celsius()), m_chamber(chamber_C), m_brick(brick_C) {}

double KilnRun::full_W(double volts) const {
    return m_kiln.powerAt({volts}).watts;
}

KilnRun::Flow KilnRun::flow(double chamber, double brick, double power_W) const {
    const double intoBrick = m_kiln.chamberToBrick_W_per_K * (chamber - brick);
    const double lost = m_kiln.chamberLoss_W_per_K * (chamber - m_around) +
                        radiated(m_kiln.radiatingArea_m2, chamber, m_around);
    return {(power_W - intoBrick - lost) / m_kiln.chamber_J_per_K,
            (intoBrick - m_kiln.brickLoss_W_per_K * (brick - m_around)) / m_kiln.brick_J_per_K};
}

double KilnRun::powerTowards_W(double chamber_C, double seconds) const {
    const double unpowered = m_chamber + flow(m_chamber, m_brick, 0).chamber * seconds;
    return (chamber_C - unpowered) / seconds * m_kiln.chamber_J_per_K;
}

void KilnRun::step(double power_W, double seconds) {
    const Flow first = flow(m_chamber, m_brick, power_W);
    const Flow second = flow(m_chamber + first.chamber * seconds, m_brick + first.brick * seconds, power_W);
    m_chamber += 0.5 * (first.chamber + second.chamber) * seconds;
    m_brick += 0.5 * (first.brick + second.brick) * seconds;
}

} // namespace ringhold
