#include "ui/plan/plan_card_words.h"

#include "ui/plan/plan_words.h"
#include "ui/plan/typed_figures.h"
#include "ui/session/preferences.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

const QString none = QStringLiteral("–");
constexpr double wholeFrom = 10; ///< slower rates get a decimal

QString figureOf(Rate rate, const Preferences& preferences) {
    const double value = preferences.shown(rate);
    return grouped(QString::number(value, 'f', std::abs(value) < wholeFrom ? 1 : 0));
}

const StepOnByHand* handAt(const PlanCard& card, std::size_t segment) {
    const auto found = std::ranges::find(card.byHand, segment, &StepOnByHand::segment);
    return found == card.byHand.end() ? nullptr : &*found;
}

QString remarkOn(const PlanCard& card, std::size_t index) {
    const auto& segment = card.segments[index];
    if (const auto* hand = handAt(card, index))
        return PlanWords::tr("until cone %1 is down: step on by hand")
            .arg(QString::fromStdString(hand->cone));
    if (segment.ring)
        return PlanWords::tr("ring %1, %2")
            .arg(*segment.ring)
            .arg(segment.motion == Motion::down ? PlanWords::tr("low") : PlanWords::tr("high"));
    const QString hold = segment.holds ? PlanWords::tr("hold") : QString();
    if (segment.motion == Motion::level)
        return hold;
    const QString way = segment.motion == Motion::up ? PlanWords::tr("climb") : PlanWords::tr("fall");
    return hold.isEmpty() ? way : way + PlanWords::tr(", then hold");
}

PlanCardRow rowOf(const PlanCard& card, std::size_t index, const Preferences& preferences) {
    const auto& segment = card.segments[index];
    PlanCardRow row;
    row.number = QString::number(index + 1);
    row.rate = segment.rate ? figureOf(*segment.rate, preferences) : PlanWords::tr("full");
    row.set = preferences.temperatureFigure(segment.set.keyed);
    row.dwell = segment.dwell > Duration::zero() ? typedForm(segment.dwell) : none;
    row.begins = !segment.begins                       ? none
                 : *segment.begins == Duration::zero() ? PlanWords::tr("start")
                                                       : preferences.span(*segment.begins);
    row.remark = remarkOn(card, index);
    row.byHand = handAt(card, index) != nullptr;
    return row;
}

QString expectedWords(const StepOnByHand& hand, const Preferences& preferences) {
    if (!hand.expected)
        return {};
    const QString after = preferences.span(*hand.expected);
    switch (hand.basis) {
    case ConeWaitEnd::estimated:
        return PlanWords::tr(" It should be down about %1 after the start, an estimate: begin to look well "
                             "before.")
            .arg(after);
    case ConeWaitEnd::stillStanding:
        return PlanWords::tr(" By the estimate it would still stand when the soak ends, %1 after the start.")
            .arg(after);
    case ConeWaitEnd::assumed:
        break;
    }
    return PlanWords::tr(" When that will be is not known: begin to look early.");
}

PlanCardHand handWords(const PlanCard& card, const StepOnByHand& hand, const Preferences& preferences) {
    const QString cone = QString::fromStdString(hand.cone);
    const auto& set = card.segments[hand.segment].set;
    const QString next = hand.next ? PlanWords::tr("step on from segment %1 to segment %2 at once.")
                                         .arg(hand.segment + 1)
                                         .arg(*hand.next + 1)
                                   : PlanWords::tr("end the programme at once.");
    PlanCardHand words;
    words.act = PlanWords::tr("When cone %1 is down, %2").arg(cone, next);
    words.more =
        PlanWords::tr("Only a look tells: no controller sees a cone.") + expectedWords(hand, preferences);
    words.more += PlanWords::tr(" Left alone, the controller goes on by itself after %1 at %2, cone down or "
                                "not. Never above %3 by this probe.")
                      .arg(typedForm(hand.longestSoak), preferences.temperature(set.keyed),
                           preferences.temperature(hand.ceiling));
    return words;
}

QString correctionWords(const PlanCard& card, std::size_t index, const Preferences& preferences) {
    const auto& set = card.segments[index].set;
    const auto* hand = handAt(card, index);
    QString words = PlanWords::tr("Segment %1: the plan's %2, corrected by %3, is %4 (%5 to %6).")
                        .arg(index + 1)
                        .arg(preferences.temperature(set.planned), preferences.difference(set.correction()),
                             preferences.temperature(set.keyed), preferences.temperatureFigure(set.low),
                             preferences.temperatureFigure(set.high));
    if (hand && hand->cutToCeiling)
        words += PlanWords::tr(" It is cut to the ceiling: the cone may not go down there.");
    return words;
}

QStringList offsetOf(const PlanCardSheet& sheet, const Preferences& preferences) {
    const auto& card = sheet.card;
    QStringList words{PlanWords::tr("This probe %1; nine times in ten the truth lies in the range.")
                          .arg(offsetWords(card.offset, preferences))};
    switch (card.correction) {
    case CardCorrection::none:
        return words << PlanWords::tr("The set points are the plan's, uncorrected.");
    case CardCorrection::coneWaits:
        for (const auto& hand : card.byHand)
            words << correctionWords(card, hand.segment, preferences);
        return words << PlanWords::tr("All other set points are the plan's, as this probe reads them.");
    case CardCorrection::all:
        words << PlanWords::tr("Every set point is corrected, away from the cones with less certainty.");
        for (const auto& hand : card.byHand)
            words << correctionWords(card, hand.segment, preferences);
        for (std::size_t i = 0; i < card.segments.size(); ++i)
            if (card.segments[i].holds)
                words << correctionWords(card, i, preferences);
    }
    return words;
}

QString afterWords(const PlanCard& card, const Preferences& preferences) {
    if (card.coolsByItselfTo)
        return PlanWords::tr("Then the programme ends and the kiln cools by itself; the plan ends at %1.")
            .arg(preferences.temperature(*card.coolsByItselfTo));
    return PlanWords::tr("Then the programme ends.");
}

QStringList cautionsFor(const PlanBasis& basis) {
    QStringList words{
        PlanWords::tr("Eyes: infrared-rated eyewear at the spyhole, every time. Stand back from the port."),
        PlanWords::tr("Stay near while the kiln is hot. Ware, kiln and spyhole plug burn long after.")};
    const bool burns = basis.kiln && basis.kiln->fuel != Fuel::electric;
    words << (burns
                  ? PlanWords::tr("Carbon monoxide: air in, flue open, an alarm that works in the room. Gas "
                                  "safety is the business of licensed trades.")
                  : PlanWords::tr("Fumes: air the room. Wiring is the business of licensed trades."));
    words << PlanWords::tr(
        "Ringhold keeps a notebook; it is no safety device and controls nothing. The kiln's "
        "own over-temperature cut-off and local codes come before this card.");
    return words;
}

QString subtitleOf(const PlanCardSheet& sheet, const Preferences& preferences) {
    QStringList parts;
    if (sheet.basis.kiln)
        parts << QString::fromStdString(sheet.basis.kiln->name);
    if (!sheet.basis.offset.probe.empty())
        parts << PlanWords::tr("probe %1").arg(QString::fromStdString(sheet.basis.offset.probe));
    if (sheet.card.length)
        parts << PlanWords::tr("%1 in all").arg(preferences.span(*sheet.card.length));
    parts << preferences.date(sheet.written);
    return parts.join(QStringLiteral(" · "));
}

} // namespace

PlanCardWords planCardWords(const PlanCardSheet& sheet, const Preferences& preferences) {
    const auto& card = sheet.card;
    PlanCardWords words;
    words.title = QString::fromStdString(card.name);
    words.subtitle = subtitleOf(sheet, preferences);
    const QString unit = preferences.unitName();
    words.heads = {PlanWords::tr("no."),
                   PlanWords::tr("rate, %1/h").arg(unit),
                   PlanWords::tr("set point, %1").arg(unit),
                   PlanWords::tr("dwell"),
                   PlanWords::tr("after"),
                   QString()};
    for (std::size_t i = 0; i < card.segments.size(); ++i)
        words.rows.push_back(rowOf(card, i, preferences));
    words.after = afterWords(card, preferences);
    if (std::ranges::any_of(card.segments, [](const CardSegment& s) { return !s.rate; }))
        words.full = PlanWords::tr("full: as fast as the kiln goes, up or down");
    for (const auto& hand : card.byHand)
        words.byHand.push_back(handWords(card, hand, preferences));
    words.offset = offsetOf(sheet, preferences);
    words.cautions = cautionsFor(sheet.basis);
    return words;
}

} // namespace ringhold
