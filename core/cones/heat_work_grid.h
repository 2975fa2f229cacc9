// Heat work of several cones over one probe's curve, for a whole range of shifts at once.
#pragma once

#include "core/cones/cone_table.h"
#include "core/units/curve.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// A shift is by how much the probe reads above what a cone feels. Nodes stand at whole multiples of the
/// step, so that 0, the probe's own curve, is always one of them.
class ShiftGrid {
  public:
    /// Covers at least [low, high] and 0; low <= high.
    ShiftGrid(double low_C, double high_C, double step_C = 2.0);

    std::size_t size() const { return m_count; }
    double step_C() const { return m_step_C; }
    double at_C(std::size_t node) const { return (m_first + static_cast<double>(node)) * m_step_C; }
    std::size_t zeroNode() const { return static_cast<std::size_t>(-m_first); }
    /// Between the nodes' values by straight line, as ln W nearly is; beyond the ends that of the end.
    double interpolated(std::span<const double> values, double shift_C) const;

  private:
    double m_step_C;
    double m_first; ///< whole, at most 0
    std::size_t m_count;
};

/// Integrates W for each cone and each shift as readings come: one exponential a cone and node and reading.
/// Remembers W at checkpoints about half a minute apart, so that a look can be judged at its own time and a
/// corrected reading costs only the stretch after it. One thread at a time.
class HeatWorkGrid {
  public:
    /// The cones must outlive the grid (those of a ConeTable do).
    HeatWorkGrid(std::vector<const Cone*> cones, const ShiftGrid& shifts);

    std::span<const Cone* const> cones() const { return m_cones; }
    const ShiftGrid& shifts() const { return m_shifts; }
    /// The last point added, if any.
    const std::optional<CurvePoint>& last() const { return m_last; }

    /// Goes on in a straight line to this point. A point not later than the last is left out.
    void add(const CurvePoint& point);
    /// Forgets everything after a checkpoint at or before `at` and says where that is, so that the caller can
    /// add the points after it again; nothing when all is forgotten.
    std::optional<Instant> rewind(Instant at);

    /// ln W now, node by node. Very small W are told as lnNone.
    std::span<const double> lnWork(std::size_t cone) const;
    /// ln W at an earlier instant, between checkpoints by straight line in ln W.
    std::vector<double> lnWorkAt(std::size_t cone, Instant at) const;
    /// When ln W of that node passed `lnTarget`; nothing if it has not yet.
    std::optional<Instant> passed(std::size_t cone, std::size_t node, double lnTarget) const;

    /// How uncertain W is through what the curve may have done between readings, as the variance of an equal
    /// shift in °C². The kiln's rate is taken to change by about 20 °C/h within a gap (an assumption), which
    /// moves the mean of a gap of g hours by 20 g / 12 °C.
    double gapVariance_C2(std::size_t cone) const;

    static constexpr double lnNone = -60;

  private:
    struct Checkpoint {
        CurvePoint point;
        std::vector<double> work;   ///< cone by cone, node by node
        std::vector<double> lnWork; ///< the same, as logarithm
        std::vector<double> gapSquares;
    };

    void integrateTo(const CurvePoint& point);
    void checkpoint();
    void refreshLogs() const;
    std::size_t index(std::size_t cone, std::size_t node) const { return cone * m_shifts.size() + node; }

    std::vector<const Cone*> m_cones;
    ShiftGrid m_shifts;
    std::vector<double> m_deadBelow_K; ///< per cone: colder than this, nothing happens in a week
    std::vector<double> m_shift_C;
    std::vector<double> m_work;
    std::vector<double>
        m_gapSquares; ///< per cone: sum of (W gained in a gap times its sd in °C)^2 at shift 0
    mutable std::vector<double> m_lnWork;
    mutable bool m_lnWorkFresh = false;
    std::optional<CurvePoint> m_last;
    std::vector<Checkpoint> m_checkpoints;
};

} // namespace ringhold
