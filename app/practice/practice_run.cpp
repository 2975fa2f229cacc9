#include "app/practice/practice_run.h"

#include "core/book/reader.h"
#include "core/kiln/practice_firing.h"
#include "core/plan/planned_curve.h"

namespace ringhold {

namespace {

constexpr std::chrono::seconds samplePeriod{10};

Duration plannedLength(const Plan& plan) {
    return planCurve(plan, PlanContext{.start = {}, .kiln = {}, .line = {}, .soFar = {}, .coneDown = {}})
        .length();
}

} // namespace

PracticeRun::PracticeRun(const Book& book, PracticeSettings settings, PracticeNotebook notebook,
                         ConeWatch watch, Console& console)
    : m_instrument(settings, 1.0, samplePeriod),
      m_potter(habitsFor(settings.plan).value_or(PotterHabits{}), settings.seed),
      m_notebook(std::move(notebook)), m_story(console.out, *m_notebook.firing().plan),
      m_watch(std::move(watch)), m_lines(book), m_now(m_notebook.firing().began) {}

Result<std::unique_ptr<PracticeRun>> PracticeRun::prepare(const Book& book, std::uint64_t seed, Instant now,
                                                          Console& console) {
    auto settings = drawnPracticeSettings(practicePlan(), seed);
    const auto begin = std::chrono::floor<std::chrono::minutes>(now - plannedLength(settings.plan));
    auto notebook = PracticeNotebook::begin(book, seed, settings.plan, begin);
    if (!notebook)
        return notebook.error();
    const auto prior = notebook->prior();
    if (!prior)
        return prior.error();
    auto watch = ConeWatch::make(settings.plan, begin, notebook->pack(), *prior);
    if (!watch)
        return watch.error();
    std::unique_ptr<PracticeRun> run(
        new PracticeRun(book, std::move(settings), std::move(*notebook), std::move(*watch), console));
    if (const auto status = run->open(book, console); !status)
        return status.error();
    return run;
}

Status PracticeRun::open(const Book& book, Console& console) {
    auto record = BookReader(book).whole(m_notebook.firing().id);
    if (!record)
        return record.error();
    auto journal = AcknowledgingJournal::open(
        book.file(), console, [](const Reading&) { return std::string(); },
        [this](const std::string&) { ++m_durable; });
    if (!journal)
        return journal.error();
    m_journal = std::move(*journal);
    m_firing.emplace(std::move(*record), *m_journal, m_lines);
    m_intake.emplace(*m_firing, console);
    return {};
}

Status PracticeRun::fire() {
    m_story.opening(m_notebook.kiln().name, m_now);
    if (const auto status = m_instrument.open(*this); !status)
        return status;
    const auto lived = live();
    m_instrument.close();
    if (!lived)
        return lived;
    if (const auto status = m_journal->close(); !status)
        return status;
    return afterwards();
}

/// The wall clock jumps from one sample to the next.
Status PracticeRun::live() {
    for (std::optional<Instant> wall = m_now; wall;) {
        wall = m_instrument.advance(*wall);
        if (const auto status = besideTheKiln(); !status)
            return status;
    }
    return {};
}

void PracticeRun::onSample(const Sample& sample) {
    m_now = sample.at;
    m_intake->take(sample);
    if (sample.quantity == Quantity::temperature && sample.value)
        m_watch.add({sample.at, Temperature::fromCelsius(*sample.value)});
}

Status PracticeRun::besideTheKiln() {
    if (!m_trulyDown)
        for (const auto& cone : m_instrument.kiln().pack())
            if (cone.cone == m_watch.firingCone() && cone.hour >= 6.0)
                m_trulyDown = m_now;
    if (const auto status = m_potter.sawFiringConeDown() ? Status() : beforeConeDown(); !status)
        return status;
    if (m_step != m_watch.step())
        m_story.step(m_watch.step(), m_now);
    m_step = m_watch.step();
    return {};
}

Status PracticeRun::beforeConeDown() {
    const auto looks = m_potter.watch(m_now, m_instrument.spyhole());
    if (!looks.empty()) {
        m_story.looks(looks);
        if (const auto status = m_notebook.write(looks, false); !status)
            return status;
        if (const auto status = m_watch.look(looks); !status)
            return status;
    }
    const auto news = m_watch.news();
    if (!news)
        return news.error();
    if (*news) {
        m_found = (*news)->packs.front();
        m_story.forecast(**news, m_watch.firingConeIn(**news));
    }
    if (m_potter.sawFiringConeDown())
        m_story.coneDown(m_watch.firingCone(), m_now);
    return {};
}

Status PracticeRun::afterwards() {
    if (const auto status = m_notebook.write(m_potter.lookNow(m_now, m_instrument.spyhole()), true); !status)
        return status;
    if (m_found)
        if (const auto status = m_notebook.file(m_found->offsetMean, m_found->offsetSd, m_now); !status)
            return status;
    if (const auto status = m_notebook.end(m_now); !status)
        return status;
    const auto curve = m_notebook.curve();
    if (!curve)
        return curve.error();
    m_story.kept(m_durable, m_now - m_notebook.firing().began);
    if (m_trulyDown)
        m_story.foretold(m_watch, *m_trulyDown);
    if (m_found)
        m_story.offset(*m_found, m_instrument.kiln().settings().trueOffset());
    m_story.judge(*curve);
    return {};
}

} // namespace ringhold
