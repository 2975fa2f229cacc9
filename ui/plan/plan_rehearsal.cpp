#include "ui/plan/plan_rehearsal.h"

#include "core/book/book.h"
#include "core/book/reader.h"
#include "core/plan/plan_kiln.h"
#include "core/report/report_curves.h"
#include "ui/plan/plan_words.h"
#include "ui/session/preferences.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr std::size_t mostFirings = 6;
/// Loads are not in the book: all firings are given this one, and today's differs from it by what is said.
constexpr double usualLoad_kg = 1000;
constexpr double oftenStalls = 0.05;
constexpr double worthSaying_C = 15;

std::optional<KilnHistory> historyOf(const FiringRecord& record) {
    auto power = powerOf(record);
    const auto control = controlChannel(record);
    if (!power || !control)
        return std::nullopt;
    return KilnHistory{curveOf(record, *control), std::move(power->trace), power->basis, usualLoad_kg};
}

QString span(double hours, const Preferences& preferences) {
    return preferences.span(durationFromHours(hours));
}

QString share(double part) {
    return PlanWords::tr("%1 of 100 runs").arg(std::clamp(qRound(part * 100), 1, 100));
}

} // namespace

Result<std::shared_ptr<const KilnFit>> fitFromBook(const BookReader& reader, const Kiln& kiln) {
    FiringFilter filter;
    filter.kiln = kiln.id;
    const auto firings = reader.firings(filter);
    if (!firings)
        return firings.error();
    std::vector<KilnHistory> histories;
    for (auto firing = firings->rbegin(); firing != firings->rend() && histories.size() < mostFirings;
         ++firing) {
        if (!firing->ended)
            continue;
        const auto record = reader.whole(firing->id);
        if (!record)
            return record.error();
        if (auto history = historyOf(*record))
            histories.push_back(std::move(*history));
    }
    if (histories.empty())
        return std::shared_ptr<const KilnFit>();
    const auto fit = fitKiln(histories, kilnModelFor(kiln.ratedPower, kiln.ratedVolts).constants);
    if (!fit)
        return std::shared_ptr<const KilnFit>(); // no firing has its power whole
    return std::make_shared<const KilnFit>(*fit);
}

Result<RehearsalTold> rehearseFromBook(const std::filesystem::path& book, const RehearsalWish& wish,
                                       std::shared_ptr<const KilnFit> known) {
    RehearsalTold told{std::move(known), 0, {}};
    if (!told.fit) {
        const auto opened = Book::open(book, Access::read);
        if (!opened)
            return opened.error();
        auto fit = fitFromBook(BookReader(*opened), wish.kiln);
        if (!fit)
            return fit.error();
        told.fit = std::move(*fit);
    }
    told.firings = told.fit ? told.fit->firings : 0;
    if (told.firings < firingsToRehearse)
        return told;
    RehearsalSettings settings;
    settings.line = wish.line;
    settings.load_kg = usualLoad_kg + wish.more_kg;
    settings.offset_C = wish.offset.mean.celsius();
    settings.offsetSd_C = wish.offset.sd.celsius();
    told.rehearsal = rehearse(wish.plan, *told.fit, settings);
    return told;
}

QString hoursWords(const RehearsedRange& hours, const Preferences& preferences) {
    if (!hours.median)
        return hours.p05 ? PlanWords::tr("not before %1").arg(span(*hours.p05, preferences))
                         : PlanWords::tr("never");
    const QString likely = span(*hours.median, preferences);
    if (!hours.p05)
        return likely;
    return hours.p95 ? PlanWords::tr("%1 (%2 to %3)")
                           .arg(likely, span(*hours.p05, preferences), span(*hours.p95, preferences))
                     : PlanWords::tr("%1 (%2 or later)").arg(likely, span(*hours.p05, preferences));
}

QString rangeWords(const RehearsedRange& range, int decimals) {
    if (!range.median || !range.p05 || !range.p95)
        return QStringLiteral("–");
    const auto figure = [decimals](double value) { return QString::number(value, 'f', decimals); };
    return PlanWords::tr("%1 (%2 to %3)").arg(figure(*range.median), figure(*range.p05), figure(*range.p95));
}

QString rehearsalWords(const Rehearsal& rehearsal, const Kiln& kiln, const Preferences& preferences) {
    QStringList parts{
        PlanWords::tr("Ends %1 after lighting").arg(hoursWords(rehearsal.length_h, preferences)),
        PlanWords::tr("%1\u202fkWh").arg(rangeWords(rehearsal.energy_kWh))};
    if (const auto price = kiln.pricePerKilowattHour) {
        const auto cost = [price](std::optional<double> kWh) {
            return kWh ? std::optional(*kWh * *price) : std::nullopt;
        };
        const auto& energy = rehearsal.energy_kWh;
        parts << PlanWords::tr("costs %1")
                     .arg(rangeWords({cost(energy.p05), cost(energy.median), cost(energy.p95)}, 2));
    }
    return parts.join(QStringLiteral(" · "));
}

QStringList rehearsalWarnings(const Plan& plan, const Rehearsal& rehearsal, const Preferences& preferences) {
    QStringList words;
    for (const auto& step : rehearsal.steps) {
        const int number = static_cast<int>(step.step) + 1;
        const bool wait = std::holds_alternative<ConeWait>(plan.steps[step.step]);
        if (step.stalledShare > oftenStalls)
            words << (wait ? PlanWords::tr("Step %1: the kiln stalls or its cone stays up in %2.")
                           : PlanWords::tr("Step %1: the kiln stalls in %2."))
                         .arg(number)
                         .arg(share(step.stalledShare));
        const auto& behind = step.behind_C;
        if (behind.median && behind.p05 && behind.p95 && *behind.median > worthSaying_C) {
            const auto shown = [&](double difference_C) {
                return preferences.difference(TemperatureDifference::fromCelsius(difference_C), 0, false);
            };
            words << PlanWords::tr("Step %1: it falls up to %2 behind (%3 to %4).")
                         .arg(number)
                         .arg(shown(*behind.median), shown(*behind.p05), shown(*behind.p95));
        }
    }
    return words;
}

} // namespace ringhold
