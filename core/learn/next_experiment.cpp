#include "core/learn/next_experiment.h"

#include "core/learn/firing_means.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <map>

namespace ringhold {

namespace {

constexpr int gridSteps = 12;
constexpr double priorWidth = 2; ///< of a coefficient, in standard deviations of the pieces
constexpr double constantWidth = 10;
constexpr double fewestPieces = 3; ///< that a next firing is taken to have

/// Columns of the model: 1, then for each range z in -1 to 1, then z² of the growth hold.
class Model {
  public:
    explicit Model(std::span<const FeasibleRange> ranges) : m_ranges(ranges.begin(), ranges.end()) {
        const auto hold = std::ranges::find(m_ranges, Cause::growthHold, &FeasibleRange::cause);
        if (hold != m_ranges.end())
            m_hold = hold - m_ranges.begin();
    }

    Eigen::Index size() const { return 1 + static_cast<Eigen::Index>(m_ranges.size()) + (m_hold ? 1 : 0); }
    std::optional<std::ptrdiff_t> hold() const { return m_hold; }
    const std::vector<FeasibleRange>& ranges() const { return m_ranges; }

    double scaled(std::size_t range, double value) const {
        const auto& r = m_ranges[range];
        return (2 * value - r.low - r.high) / (r.high - r.low);
    }

    Eigen::VectorXd row(const std::vector<double>& values) const {
        Eigen::VectorXd row(size());
        row(0) = 1;
        for (std::size_t i = 0; i < m_ranges.size(); ++i)
            row(static_cast<Eigen::Index>(i) + 1) = scaled(i, values[i]);
        if (m_hold)
            row(size() - 1) = row(*m_hold + 1) * row(*m_hold + 1);
        return row;
    }

  private:
    std::vector<FeasibleRange> m_ranges;
    std::optional<std::ptrdiff_t> m_hold;
};

/// What is known of the coefficients: normal, with this mean and the inverse of this covariance.
struct Known {
    Eigen::MatrixXd precision;
    Eigen::VectorXd mean;
    double firingVariance = 1; ///< of a next firing's mean
};

struct FiringRow {
    std::vector<double> values;
    double outcome = 0;
    int pieces = 0;
};

/// Firings by the means of all causes that have a range; a cause that a firing does not tell is taken at the
/// middle.
std::vector<FiringRow> rowsOf(std::span<const PieceResult> pieces, Judged judged, const Model& model) {
    std::map<FiringId, FiringRow> rows;
    for (std::size_t i = 0; i < model.ranges().size(); ++i) {
        const auto& range = model.ranges()[i];
        for (const auto& firing : firingMeansOf(pieces, range.cause, judged).firings) {
            auto& row = rows[firing.firing];
            if (row.values.empty())
                for (const auto& other : model.ranges())
                    row.values.push_back((other.low + other.high) / 2);
            row.values[i] = firing.cause;
            row.outcome = firing.outcome;
            row.pieces = std::max(row.pieces, firing.pieces);
        }
    }
    std::vector<FiringRow> list;
    for (auto& [firing, row] : rows)
        list.push_back(std::move(row));
    return list;
}

Known learned(const std::vector<FiringRow>& rows, const Model& model, double pieceSd) {
    const double sd = pieceSd > 0 ? pieceSd : 1;
    Known known;
    Eigen::VectorXd widths = Eigen::VectorXd::Constant(model.size(), priorWidth * sd);
    widths(0) = constantWidth * sd;
    known.precision = widths.array().square().inverse().matrix().asDiagonal();
    Eigen::VectorXd weighted = Eigen::VectorXd::Zero(model.size());
    double mean = 0;
    for (const auto& row : rows)
        mean += row.outcome / static_cast<double>(rows.size());
    weighted(0) = known.precision(0, 0) * mean;
    // half of the scatter is taken to be the firing's, half the pieces'
    const auto variance = [sd](double pieces) { return sd * sd * (0.5 + 0.5 / pieces); };
    for (const auto& row : rows) {
        const Eigen::VectorXd x = model.row(row.values);
        known.precision += x * x.transpose() / variance(row.pieces);
        weighted += x * row.outcome / variance(row.pieces);
    }
    known.mean = known.precision.ldlt().solve(weighted);
    known.firingVariance = variance(fewestPieces);
    return known;
}

std::vector<std::vector<double>> gridOf(const Model& model) {
    std::vector<std::vector<double>> grid{{}};
    for (const auto& range : model.ranges()) {
        std::vector<std::vector<double>> longer;
        for (const auto& values : grid)
            for (int i = 0; i <= gridSteps; ++i) {
                auto more = values;
                more.push_back(range.low + (range.high - range.low) * i / gridSteps);
                longer.push_back(std::move(more));
            }
        grid = std::move(longer);
    }
    return grid;
}

/// How the best growth hold, in °C, moves with each coefficient: z = -b1 / (2 b2).
Eigen::VectorXd bestGradient(const Known& known, const Model& model) {
    const auto hold = *model.hold();
    const auto& range = model.ranges()[static_cast<std::size_t>(hold)];
    const double b1 = known.mean(hold + 1), b2 = known.mean(model.size() - 1);
    Eigen::VectorXd gradient = Eigen::VectorXd::Zero(model.size());
    gradient(hold + 1) = -1 / (2 * b2);
    gradient(model.size() - 1) = b1 / (2 * b2 * b2);
    return gradient * (range.high - range.low) / 2;
}

/// How much a firing there would take off the variance along `gradient`.
double variancePrevented(const Eigen::MatrixXd& covariance, const Eigen::VectorXd& gradient,
                         const Eigen::VectorXd& row, double variance) {
    const double common = gradient.dot(covariance * row);
    return common * common / (variance + row.dot(covariance * row));
}

std::string otherShelf(std::span<const PieceResult> pieces, const std::string& taken) {
    std::map<std::string, int> count;
    for (const auto& piece : pieces)
        if (!piece.position.empty() && piece.position != taken)
            ++count[piece.position];
    const auto most = std::ranges::max_element(count, {}, [](const auto& entry) { return entry.second; });
    return most == count.end() ? std::string() : most->first;
}

/// The shelf that the suggested hold has not had yet, where hold and shelf went together.
std::string shelfToAdd(std::span<const PieceResult> pieces, const Lesson& hold, double value_C) {
    const auto confounder = std::ranges::find(hold.confounders, Cause::position, &Confounder::with);
    if (confounder == hold.confounders.end() || hold.curve.empty())
        return {};
    const double middle = (hold.curve.front().cause + hold.curve.back().cause) / 2;
    const auto& taken = value_C > middle ? confounder->upperHalfOn : confounder->lowerHalfOn;
    return taken.empty() ? std::string() : otherShelf(pieces, taken);
}

Status check(std::span<const FeasibleRange> ranges) {
    if (ranges.empty())
        return Error{ErrorKind::badInput, "a next firing wants at least one range to choose from"};
    for (const auto& range : ranges)
        if (!isOfFiring(range.cause) || !(range.low < range.high) || !std::isfinite(range.high - range.low) ||
            std::ranges::count(ranges, range.cause, &FeasibleRange::cause) > 1)
            return Error{ErrorKind::badInput,
                         "ranges to choose from are of growth hold, hold time and peak, each once"};
    return {};
}

} // namespace

Result<NextExperiment> nextExperiment(std::span<const PieceResult> pieces, Judged judged,
                                      std::span<const FeasibleRange> ranges) {
    if (const Status status = check(ranges); !status)
        return status.error();
    const Model model(ranges);
    const Known known = learned(rowsOf(pieces, judged, model), model, pieceSdOf(pieces, judged));
    const Eigen::MatrixXd covariance = known.precision.inverse();
    const Lesson hold = learnFrom(pieces, {judged, 1}).front();
    NextExperiment next;
    Eigen::VectorXd gradient;
    if (model.hold() && hold.claim && hold.claim->trend == Trend::best) {
        next.aim = Aim::sharpenBest;
        gradient = bestGradient(known, model);
    }
    double most = -1;
    std::vector<double> chosen;
    for (const auto& values : gridOf(model)) {
        const Eigen::VectorXd row = model.row(values);
        const double told = next.aim == Aim::sharpenBest
                                ? variancePrevented(covariance, gradient, row, known.firingVariance)
                                : row.dot(covariance * row);
        if (told > most * (1 + 1e-9)) {
            most = told;
            chosen = values;
        }
    }
    const Eigen::VectorXd row = model.row(chosen);
    next.bits = 0.5 * std::log2(1 + row.dot(covariance * row) / known.firingVariance);
    for (std::size_t i = 0; i < chosen.size(); ++i)
        next.values.push_back({model.ranges()[i].cause, chosen[i]});
    if (next.aim == Aim::sharpenBest) {
        const double now = gradient.dot(covariance * gradient);
        next.bestSdNow_C = std::sqrt(now);
        next.bestSdThen_C = std::sqrt(std::max(0.0, now - most));
    }
    if (model.hold())
        next.alsoOn = shelfToAdd(pieces, hold, chosen[static_cast<std::size_t>(*model.hold())]);
    return next;
}

} // namespace ringhold
