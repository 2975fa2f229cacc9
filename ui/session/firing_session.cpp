#include "ui/session/firing_session.h"

#include "core/base/clock.h"
#include "core/report/fired_cones.h"

#include <QMetaObject>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int idleTick_ms = 200;
constexpr int refresh_ms = 1000;

Error failed(const char* what) {
    return {ErrorKind::failed, what};
}

} // namespace

/// Carries what the journal tells in its own thread over to the window's.
class FiringSession::DiskNews : public JournalListener {
  public:
    explicit DiskNews(FiringSession& session) : m_session(session) {}

    void onDurable(Ticket upTo) override {
        post([upTo](FiringSession& s) {
            s.m_firing->markDurable(upTo);
            Q_EMIT s.durableChanged();
        });
    }
    void onChannel(ChannelId given, ChannelId kept) override {
        post([given, kept](FiringSession& s) { s.m_firing->markKept(given, kept); });
    }
    void onRefused(Ticket, const Reading& reading, const Error& why) override {
        tellTrouble(
            FiringSession::tr("The reading of %1 could not be kept: %2")
                .arg(QString::fromStdString(formatIso8601(reading.at)), QString::fromStdString(why.text())));
    }
    void onFailing(const Error& why) override { tellTrouble(QString::fromStdString(why.text())); }
    void onRecovered() override { tellTrouble({}); }
    void onAlarms(const Status& kept) {
        if (!kept)
            tellTrouble(QString::fromStdString(kept.error().text()));
        else
            post([](FiringSession& s) { Q_EMIT s.alarmsKept(); });
    }

  private:
    template <class Action>
    void post(Action action) {
        QMetaObject::invokeMethod(
            &m_session, [this, action] { action(m_session); }, Qt::QueuedConnection);
    }
    void tellTrouble(const QString& trouble) {
        post([trouble](FiringSession& s) {
            s.m_diskTrouble = trouble;
            Q_EMIT s.diskTroubleChanged();
        });
    }
    FiringSession& m_session;
};

FiringSession::FiringSession(Parts parts)
    : m_parts(std::move(parts)), m_diskNews(std::make_unique<DiskNews>(*this)) {
    m_advance.setSingleShot(true);
    m_advance.setTimerType(Qt::PreciseTimer);
    connect(&m_advance, &QTimer::timeout, this, &FiringSession::advanceInstrument);
    m_judge.setSingleShot(true);
    connect(&m_judge, &QTimer::timeout, this, &FiringSession::judge);
    m_refresh.setSingleShot(true);
    connect(&m_refresh, &QTimer::timeout, this, &FiringSession::check);
    connect(&m_check, &QTimer::timeout, this, &FiringSession::check);
}

FiringSession::~FiringSession() {
    if (m_parts.instrument)
        m_parts.instrument->close();
    m_journal.reset(); // commits what waits, and tells no more
    m_alarmJournal.reset();
}

Result<std::unique_ptr<FiringSession>> FiringSession::make(Parts parts, const Journals& journals) {
    std::unique_ptr<FiringSession> session(new FiringSession(std::move(parts)));
    if (const auto opened = session->open(journals); !opened)
        return opened.error();
    return session;
}

Status FiringSession::open(const Journals& journals) {
    auto journal = journals.readings(*m_diskNews);
    if (!journal)
        return journal.error();
    m_journal = std::move(journal).value();
    m_alarmJournal = journals.alarms([this](const Status& kept) { m_diskNews->onAlarms(kept); });
    if (const auto made = makeWatch(); !made)
        return made;
    m_check.start(refresh_ms);
    if (!m_parts.instrument)
        return {};
    if (const auto opened = m_parts.instrument->open(*this); !opened)
        return opened;
    advanceInstrument();
    return {};
}

Status FiringSession::makeWatch() {
    const auto probe = m_parts.record.probes.empty() ? nullptr : &m_parts.record.probes.front();
    for (const auto& pack : m_parts.record.packs)
        m_priors.push_back(offsetPriorFor(probe, pack.place, m_parts.filed));
    m_firing = std::make_unique<LiveFiring>(std::move(m_parts.record), *m_journal, *m_parts.log);
    m_firing->setListener(this);
    auto watch = FiringWatch::make({m_firing.get(), m_priors}, m_parts.watch);
    if (!watch)
        return watch.error();
    m_watch = std::move(watch).value();
    tellForecast();
    return {};
}

Instant FiringSession::now() const {
    const Instant wall = m_parts.clock->now();
    return m_parts.instrument ? m_parts.instrument->kilnTime(wall) : wall;
}

QString FiringSession::instrumentDescription() const {
    return m_parts.instrument ? QString::fromStdString(m_parts.instrument->description()) : QString();
}

void FiringSession::advanceInstrument() {
    const Instant wall = m_parts.clock->now();
    const auto next = m_parts.instrument->advance(wall);
    if (!next)
        return;
    const auto wait = std::chrono::ceil<std::chrono::milliseconds>(*next - wall);
    m_advance.start(static_cast<int>(std::clamp<std::int64_t>(wait.count(), 1, idleTick_ms)));
}

void FiringSession::onSample(const Sample& sample) {
    if (const auto taken = m_firing->take(sample); !taken) {
        m_diskTrouble = QString::fromStdString(taken.error().text());
        Q_EMIT diskTroubleChanged();
    }
    m_judge.start(0); // an open probe is no reading, but it is news
}

void FiringSession::onLine(const std::string& line, bool understood) {
    Q_EMIT rawLine(QString::fromStdString(line), understood);
}

void FiringSession::onLink(LinkState state, const std::string& detail) {
    m_link = state;
    m_linkDetail = QString::fromStdString(detail);
    m_judge.start(0);
    Q_EMIT linkChanged();
}

void FiringSession::onReading(const Channel& channel, const Reading& reading) {
    m_watch->onReading(channel, reading);
    m_moved = true;
    if (!m_judge.isActive())
        m_judge.start(0); // of several that come together one judgement is enough
    if (!m_refresh.isActive())
        m_refresh.start(forecast() ? refresh_ms : 0);
    Q_EMIT readingTaken();
}

void FiringSession::onLinesChanged(Instant from) {
    m_watch->onLinesChanged(from);
    tellForecast();
    Q_EMIT linesChanged();
}

WatchTroubles FiringSession::troubles() const {
    return {m_link == LinkState::lost ? m_linkDetail.toStdString() : std::string(),
            m_diskTrouble.toStdString()};
}

void FiringSession::check() {
    judge();
    if (m_moved)
        tellForecast();
}

/// What is due is taken before anybody says that it is late.
void FiringSession::judge() {
    if (m_parts.instrument)
        advanceInstrument();
    m_judge.stop(); // that brought readings too: they are judged now
    keep(m_watch->check(now(), troubles()));
    if (const auto stage = alarms().stage(now()); stage != m_stage) {
        m_stage = stage;
        Q_EMIT alarmsChanged();
    }
}

void FiringSession::keep(const std::vector<AlarmEvent>& events) {
    for (const auto& event : events)
        m_alarmJournal->append(event);
    if (!events.empty())
        Q_EMIT alarmsChanged();
}

void FiringSession::tellForecast() {
    m_moved = false;
    m_doubts = forecast() ? doubtfulLooks(*forecaster(), record().looks, *forecast(), follower())
                          : std::vector<LookDoubt>();
    Q_EMIT forecastChanged();
}

void FiringSession::acknowledge(AlarmCause cause, const QString& who) {
    keep(m_watch->acknowledge(cause, now(), who.toStdString()));
}

void FiringSession::acknowledgeAll(const QString& who) {
    keep(m_watch->acknowledgeAll(now(), who.toStdString()));
}

void FiringSession::keepQuietUntil(std::optional<Instant> until) {
    m_watch->board().keepQuietUntil(until);
    Q_EMIT alarmsChanged();
}

Status FiringSession::correctStep(std::size_t step) {
    const auto written = m_firing->writeStep(now(), step);
    return written ? Status() : Status(written.error());
}

void FiringSession::setWatchSettings(const WatchSettings& settings) {
    m_watch->setSettings(settings);
    check();
}

Status FiringSession::end() {
    if (m_parts.instrument)
        m_parts.instrument->close();
    m_advance.stop();
    if (!m_firing)
        return failed("the firing was never opened");
    m_check.stop();
    m_refresh.stop();
    m_judge.stop();
    if (const auto filed = fileOffsets(); !filed)
        return filed;
    if (const auto ended = m_firing->end(now()); !ended)
        return ended;
    keep(m_watch->board().close(now()));
    return {};
}

/// What each pack's looks told of the probe is the next firing's prior.
Status FiringSession::fileOffsets() {
    FiringRecord ended = record();
    ended.firing.ended = now();
    for (const auto& offset : offsetsTold(ended, m_firing->controlCurve()))
        if (const auto kept = m_parts.log->file(offset); !kept)
            return kept;
    return {};
}

} // namespace ringhold
