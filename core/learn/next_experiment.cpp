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
constexpr std::size_t fewestFirings = 3;
constexpr double peakStep_C = 5;
constexpr double nearlyAsMuch = 0.9;
constexpr int reachSteps = 60;

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

/// Looks for the setting by which a firing would tell most. Model and knowledge outlive it.
class Search {
  public:
    Search(const Model& model, const Known& known)
        : m_model(model), m_known(known), m_covariance(known.precision.inverse()) {}

    /// From now on what counts is the variance along this gradient.
    void sharpen(Eigen::VectorXd gradient) { m_gradient = std::move(gradient); }
    double bestVariance() const { return m_gradient->dot(m_covariance * *m_gradient); }

    double told(const std::vector<double>& values) const {
        const Eigen::VectorXd row = m_model.row(values);
        return m_gradient ? variancePrevented(m_covariance, *m_gradient, row, m_known.firingVariance)
                          : row.dot(m_covariance * row);
    }

    double bits(const std::vector<double>& values) const {
        const Eigen::VectorXd row = m_model.row(values);
        return 0.5 * std::log2(1 + row.dot(m_covariance * row) / m_known.firingVariance);
    }

    std::vector<double> best() const {
        double most = -1;
        std::vector<double> chosen;
        for (const auto& values : gridOf(m_model))
            if (const double here = told(values); here > most * (1 + 1e-9)) {
                most = here;
                chosen = values;
            }
        return chosen;
    }

    SuggestedValue suggested(const std::vector<double>& chosen, std::size_t i) const {
        const auto& range = m_model.ranges()[i];
        return {range.cause, chosen[i], reach(chosen, i, range.low), reach(chosen, i, range.high)};
    }

  private:
    /// How far towards that end value i may go.
    double reach(std::vector<double> values, std::size_t i, double end) const {
        const double enough = nearlyAsMuch * told(values), from = values[i];
        double reached = from;
        for (int step = 1; step <= reachSteps; ++step) {
            values[i] = from + (end - from) * step / reachSteps;
            if (told(values) < enough)
                break;
            reached = values[i];
        }
        return reached;
    }

    const Model& m_model;
    const Known& m_known;
    Eigen::MatrixXd m_covariance;
    std::optional<Eigen::VectorXd> m_gradient;
};

bool peakMatters(const std::vector<Lesson>& lessons) {
    const auto of = [&](Cause cause) { return std::ranges::find(lessons, cause, &Lesson::cause); };
    const auto peak = of(Cause::peak), hold = of(Cause::growthHold);
    return peak->verdict == Verdict::claimed || peak->shortfall == Shortfall::unclear ||
           std::ranges::count(hold->confounders, Cause::peak, &Confounder::with) > 0;
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

std::optional<FeasibleRange> peaksToTry(std::span<const PieceResult> pieces, Judged judged) {
    const auto means = firingMeansOf(pieces, Cause::peak, judged).firings;
    if (means.size() < fewestFirings || !peakMatters(learnFrom(pieces, {judged, 1})))
        return std::nullopt;
    const auto [low, high] = std::ranges::minmax(means, {}, &FiringMean::cause);
    return FeasibleRange{Cause::peak, low.cause - peakStep_C, high.cause + peakStep_C};
}

Result<NextExperiment> nextExperiment(std::span<const PieceResult> pieces, Judged judged,
                                      std::span<const FeasibleRange> ranges) {
    if (const Status status = check(ranges); !status)
        return status.error();
    const Model model(ranges);
    const Known known = learned(rowsOf(pieces, judged, model), model, pieceSdOf(pieces, judged));
    const Lesson hold = learnFrom(pieces, {judged, 1}).front();
    Search search(model, known);
    NextExperiment next;
    if (model.hold() && hold.claim && hold.claim->trend == Trend::best) {
        next.aim = Aim::sharpenBest;
        search.sharpen(bestGradient(known, model));
    }
    const auto chosen = search.best();
    next.bits = search.bits(chosen);
    for (std::size_t i = 0; i < chosen.size(); ++i)
        next.values.push_back(search.suggested(chosen, i));
    if (next.aim == Aim::sharpenBest) {
        next.bestSdNow_C = std::sqrt(search.bestVariance());
        next.bestSdThen_C = std::sqrt(std::max(0.0, search.bestVariance() - search.told(chosen)));
    }
    if (model.hold())
        next.alsoOn = shelfToAdd(pieces, hold, chosen[static_cast<std::size_t>(*model.hold())]);
    return next;
}

} // namespace ringhold
