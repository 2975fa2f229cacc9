#include "ui/plan/step_cells.h"

#include "ui/plan/plan_words.h"
#include "ui/plan/typed_figures.h"
#include "ui/session/preferences.h"

#include <algorithm>

namespace ringhold {

namespace {

using std::chrono::minutes;

constexpr Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}

constexpr Rate perHour(double celsius) {
    return Rate::fromCelsiusPerHour(celsius);
}

constexpr QChar thinSpace(0x202f);

/// The kiln's own pace, where a rate may be left open.
QString ownPace() {
    return PlanWords::tr("full");
}

using Cell = std::optional<StepCell>;

struct CellFinder {
    StepColumn column;

    Cell operator()(Climb& s) const {
        switch (column) {
        case StepColumn::temperature:
            return StepCell{&s.to, "to_C", "temperature"};
        case StepColumn::rate:
            return StepCell{&s.rate, "rate_C_per_h", "rate"};
        default:
            return std::nullopt;
        }
    }
    Cell operator()(Hold& s) const {
        switch (column) {
        case StepColumn::temperature:
            return StepCell{&s.at, "at_C", "temperature"};
        case StepColumn::time:
            return StepCell{&s.length, "minutes", "time"};
        case StepColumn::limit:
            return StepCell{&s.band, "band_C", "band"};
        default:
            return std::nullopt;
        }
    }
    Cell operator()(ConeWait& s) const {
        switch (column) {
        case StepColumn::which:
            return StepCell{&s.cone, "cone", "cone"};
        case StepColumn::temperature:
            return StepCell{&s.set, "set_C", "set point"};
        case StepColumn::rate:
            return StepCell{&s.rate, "rate_C_per_h", "rate"};
        case StepColumn::time:
            return StepCell{&s.longestSoak, "longest_soak_min", "longest soak"};
        case StepColumn::limit:
            return StepCell{&s.ceiling, "ceiling_C", "ceiling"};
        default:
            return std::nullopt;
        }
    }
    Cell operator()(Rings& s) const {
        switch (column) {
        case StepColumn::which:
            return StepCell{&s.count, "count", "number of rings"};
        case StepColumn::temperature:
            return StepCell{&s.high, "high_C", "high"};
        case StepColumn::time:
            return StepCell{&s.highDwell, "high_min", "time at the high"};
        case StepColumn::limit:
            return StepCell{&s.low, "low_C", "low"};
        case StepColumn::lowTime:
            return StepCell{&s.lowDwell, "low_min", "time at the low"};
        default:
            return std::nullopt;
        }
    }
    Cell operator()(Drop& s) const { return ofFall(s.to, s.rate); }
    Cell operator()(Cool& s) const { return ofFall(s.to, s.rate); }

  private:
    Cell ofFall(Temperature& to, std::optional<Rate>& rate) const {
        switch (column) {
        case StepColumn::temperature:
            return StepCell{&to, "to_C", "temperature"};
        case StepColumn::rate:
            return StepCell{&rate, "rate_C_per_h", "rate"};
        default:
            return std::nullopt;
        }
    }
};

/// The bare figure, as typed.
struct Offer {
    const Preferences& preferences;

    QString operator()(const std::string* text) const { return QString::fromStdString(*text); }
    QString operator()(const int* count) const { return QString::number(*count); }
    QString operator()(const Duration* time) const { return typedForm(*time); }
    QString operator()(const std::optional<Rate>* rate) const {
        return *rate ? typedForm(**rate, preferences) : ownPace();
    }
    template <class Quantity>
    QString operator()(const Quantity* quantity) const {
        return typedForm(*quantity, preferences);
    }
};

/// What was typed, as a value; nothing when it is not understood.
struct Understand {
    QString text;
    const Preferences& preferences;

    std::optional<std::string> operator()(const std::string*) const {
        const QString cone = text.trimmed();
        const bool named = cone.startsWith(QStringLiteral("cone"), Qt::CaseInsensitive);
        return (named ? cone.mid(4).trimmed() : cone).toStdString();
    }
    std::optional<int> operator()(const int*) const { return typedCount(text); }
    std::optional<Temperature> operator()(const Temperature*) const {
        return typedTemperature(text, preferences);
    }
    std::optional<TemperatureDifference> operator()(const TemperatureDifference*) const {
        return typedDifference(text, preferences);
    }
    std::optional<Rate> operator()(const Rate*) const { return typedRate(text, preferences); }
    std::optional<std::optional<Rate>> operator()(const std::optional<Rate>*) const {
        const QString word = text.trimmed().toLower();
        if (word.isEmpty() || word == ownPace())
            return std::optional<Rate>();
        const auto rate = typedRate(text, preferences);
        return rate ? std::optional(rate) : std::nullopt;
    }
    std::optional<Duration> operator()(const Duration*) const { return typedTime(text); }
};

QString unitOf(const StepValue& value, const Preferences& preferences) {
    if (std::holds_alternative<Temperature*>(value) || std::holds_alternative<TemperatureDifference*>(value))
        return thinSpace + preferences.unitName();
    const auto* perhaps = std::get_if<std::optional<Rate>*>(&value);
    if (std::holds_alternative<Rate*>(value) || (perhaps && **perhaps))
        return thinSpace + preferences.unitName() + QStringLiteral("/h");
    return {};
}

/// What stands before a figure so that it is not taken for another.
QString leadOf(const StepCell& cell) {
    if (cell.key == "band_C")
        return QStringLiteral("±") + thinSpace;
    if (cell.key == "ceiling_C")
        return PlanWords::tr("max ");
    if (cell.key == "low_C")
        return PlanWords::tr("low ");
    return cell.key == "cone" ? PlanWords::tr("cone ") : QString();
}

} // namespace

StepKind kindOf(const Step& step) {
    return static_cast<StepKind>(step.index());
}

QString kindWords(StepKind kind) {
    static const QString words[] = {PlanWords::tr("climb"),     PlanWords::tr("hold"),
                                    PlanWords::tr("cone wait"), PlanWords::tr("drop"),
                                    PlanWords::tr("rings"),     PlanWords::tr("cool")};
    return words[static_cast<std::size_t>(kind)];
}

Step usualStep(StepKind kind, Temperature from) {
    const auto below = [from](double degrees) { return std::min(C(degrees), from); };
    switch (kind) {
    case StepKind::climb:
        return Climb{from < C(550) ? C(600) : std::max(from, C(1100)), perHour(150)};
    case StepKind::hold:
        return Hold{from, minutes(30), TemperatureDifference::fromCelsius(6)};
    case StepKind::coneWait: {
        const auto set = std::max(C(1260), from);
        return ConeWait{"9", perHour(60), set, set + TemperatureDifference::fromCelsius(20), minutes(40)};
    }
    case StepKind::drop:
        return Drop{below(1085), {}};
    case StepKind::rings:
        return Rings{3, from - TemperatureDifference::fromCelsius(45), minutes(9), from, minutes(9)};
    default:
        return Cool{below(600), {}};
    }
}

Step converted(const Step& step, StepKind kind, Temperature from) {
    Step old = step;
    Step made = usualStep(kind, from);
    if (const auto temperature = cellOf(old, StepColumn::temperature))
        made = usualStep(kind, *std::get<Temperature*>(temperature->value));
    for (const auto column : {StepColumn::temperature, StepColumn::rate, StepColumn::time}) {
        const auto source = cellOf(old, column);
        const auto target = cellOf(made, column);
        if (!source || !target)
            continue;
        if (auto* const* t = std::get_if<Temperature*>(&source->value))
            *std::get<Temperature*>(target->value) = **t;
        else if (auto* const* d = std::get_if<Duration*>(&source->value))
            *std::get<Duration*>(target->value) = **d;
        else {
            auto* const* sure = std::get_if<Rate*>(&source->value);
            const auto rate = sure ? std::optional(**sure) : *std::get<std::optional<Rate>*>(source->value);
            if (auto* const* to = std::get_if<Rate*>(&target->value))
                **to = rate.value_or(**to);
            else
                *std::get<std::optional<Rate>*>(target->value) = rate;
        }
    }
    return made;
}

Temperature endOf(const Plan& plan, std::size_t steps) {
    if (steps == 0)
        return C(20);
    Step last = plan.steps[steps - 1];
    return *std::get<Temperature*>(cellOf(last, StepColumn::temperature)->value);
}

std::optional<StepCell> cellOf(Step& step, StepColumn column) {
    return std::visit(CellFinder{column}, step);
}

std::optional<StepColumn> columnOf(const Step& step, std::string_view key) {
    Step looked = step;
    for (int i = 0; i < stepColumns; ++i) {
        const auto column = static_cast<StepColumn>(i);
        if (const auto cell = cellOf(looked, column); cell && cell->key == key)
            return column;
    }
    return std::nullopt;
}

QString shownIn(const StepCell& cell, const Preferences& preferences) {
    if (std::holds_alternative<int*>(cell.value)) {
        const int count = *std::get<int*>(cell.value);
        return QString::number(count) + (count == 1 ? PlanWords::tr(" ring") : PlanWords::tr(" rings"));
    }
    const QString offered = offeredIn(cell, preferences);
    const bool isCone = std::holds_alternative<std::string*>(cell.value);
    return leadOf(cell) + (isCone ? offered : grouped(offered));
}

QString toldIn(const StepCell& cell, const Preferences& preferences) {
    const QString figure =
        cell.key == "band_C" ? shownIn(cell, preferences) : grouped(offeredIn(cell, preferences));
    return figure + unitOf(cell.value, preferences);
}

QString offeredIn(const StepCell& cell, const Preferences& preferences) {
    return std::visit(Offer{preferences}, cell.value);
}

Typing typeInto(const StepCell& cell, const QString& text, const Preferences& preferences) {
    if (text == offeredIn(cell, preferences) || text == shownIn(cell, preferences))
        return Typing::unchanged;
    return std::visit(
        [&](auto* value) {
            const auto typed = Understand{text, preferences}(value);
            if (!typed)
                return Typing::notUnderstood;
            if (*value == *typed)
                return Typing::unchanged;
            *value = *typed;
            return Typing::changed;
        },
        cell.value);
}

} // namespace ringhold
