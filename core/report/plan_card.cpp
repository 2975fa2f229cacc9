#include "core/report/plan_card.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double z90 = 1.6448536269514722; ///< 95 % quantile of the normal distribution
constexpr Temperature coldKiln = Temperature::fromCelsius(20);
/// Where cones are taken to have told the offset when the plan waits for none: an assumption.
constexpr Temperature usualCones = Temperature::fromCelsius(1250);

/// The temperature at which the cones told the offset.
Temperature whereConesTell(const Plan& plan) {
    std::optional<Temperature> hottest;
    for (const auto& step : plan.steps)
        if (const auto* wait = std::get_if<ConeWait>(&step))
            hottest = std::max(hottest.value_or(wait->set), wait->set);
    return hottest.value_or(usualCones);
}

/// Writes segment after segment as a step asks for them.
class CardWriter {
  public:
    CardWriter(const Plan& plan, PlanCard& card, const PlannedCurve* planned)
        : m_card(card), m_planned(planned), m_last(plan.steps.size() - 1), m_cones(whereConesTell(plan)) {}

    void write(std::size_t index, const Step& step) {
        m_step = index;
        std::visit(*this, step);
    }

    void operator()(const Climb& climb) {
        if (climb.to > m_now || m_afterWait)
            ramp(climb.to, climb.rate);
    }

    void operator()(const Hold& hold) {
        const bool there = !m_card.segments.empty() && hold.at == m_now && !m_afterWait &&
                           m_card.segments.back().dwell == Duration::zero();
        if (!there)
            ramp(hold.at, {});
        m_card.segments.back().dwell = hold.length;
        m_card.segments.back().holds = true;
    }

    void operator()(const ConeWait& wait) {
        ramp(wait.set, wait.rate);
        auto& segment = m_card.segments.back();
        segment.dwell = wait.longestSoak;
        StepOnByHand hand{
            m_card.segments.size() - 1, {}, wait.cone, wait.longestSoak, wait.ceiling, false, {}, {}};
        if (m_card.correction != CardCorrection::none) {
            correct(segment.set);
            hand.cutToCeiling = segment.set.keyed > wait.ceiling;
            for (Temperature* t : {&segment.set.keyed, &segment.set.low, &segment.set.high})
                *t = std::min(*t, wait.ceiling);
        }
        expect(hand);
        m_card.byHand.push_back(hand);
        m_afterWait = true;
    }

    void operator()(const Drop& drop) { ramp(drop.to, drop.rate); }

    void operator()(const Cool& cool) {
        if (!cool.rate && m_step == m_last)
            m_card.coolsByItselfTo = cool.to;
        else
            ramp(cool.to, cool.rate);
    }

    void operator()(const Rings& rings) {
        for (int ring = 1; ring <= rings.count; ++ring) {
            m_ring = ring;
            ramp(rings.low, {});
            m_card.segments.back().dwell = rings.lowDwell;
            ramp(rings.high, {});
            m_card.segments.back().dwell = rings.highDwell;
        }
        m_ring.reset();
    }

  private:
    void ramp(Temperature to, std::optional<Rate> rate) {
        CardSegment segment{m_step, m_ring, rate, motionTo(to), {to, to, to, to}, {}, false, {}};
        segment.begins = beginOf(segment);
        if (m_card.correction == CardCorrection::all)
            correct(segment.set);
        if (!m_card.byHand.empty() && !m_card.byHand.back().next && m_afterWait)
            m_card.byHand.back().next = m_card.segments.size();
        m_card.segments.push_back(segment);
        m_now = to;
        m_afterWait = false;
    }

    Motion motionTo(Temperature to) const {
        return to > m_now ? Motion::up : to < m_now ? Motion::down : Motion::level;
    }

    void correct(SetPoint& set) const {
        const auto offset = carriedTo(set.planned, m_card.offset, m_cones);
        set.keyed = set.planned + offset.mean;
        set.low = set.keyed - offset.sd * z90;
        set.high = set.keyed + offset.sd * z90;
    }

    std::optional<Duration> beginOf(const CardSegment& segment) const {
        if (!m_planned)
            return std::nullopt;
        for (const auto& leg : m_planned->legs)
            if (leg.step == segment.step && leg.ring == segment.ring &&
                (!segment.ring || leg.motion == segment.motion))
                return leg.start - m_planned->start();
        return m_planned->steps[segment.step].start - m_planned->start();
    }

    void expect(StepOnByHand& hand) const {
        if (!m_planned)
            return;
        const auto& step = m_planned->steps[m_step];
        hand.expected = step.end - m_planned->start();
        hand.basis = step.coneWaitEnd.value_or(ConeWaitEnd::assumed);
    }

    PlanCard& m_card;
    const PlannedCurve* m_planned;
    std::size_t m_last;
    Temperature m_cones;
    std::size_t m_step = 0;
    std::optional<int> m_ring;
    Temperature m_now = coldKiln;
    bool m_afterWait = false; ///< the kiln may be anywhere up to the ceiling
};

} // namespace

PlanCard planCard(const Plan& plan, const OffsetPrior& offsetAtCones, CardCorrection correction,
                  const PlannedCurve* planned) {
    PlanCard card;
    card.name = plan.name;
    card.offset = offsetAtCones;
    card.correction = correction;
    if (planned)
        card.length = planned->length();
    CardWriter writer(plan, card, planned);
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
        writer.write(i, plan.steps[i]);
    return card;
}

} // namespace ringhold
