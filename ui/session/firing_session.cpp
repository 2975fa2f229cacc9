#include "ui/session/firing_session.h"

#include "core/base/clock.h"

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
    void onRefused(Ticket, const Reading& reading, const Error& why) override {
        tellTrouble(
            QStringLiteral("The reading of %1 could not be kept: %2")
                .arg(QString::fromStdString(formatIso8601(reading.at)), QString::fromStdString(why.text())));
    }
    void onFailing(const Error& why) override { tellTrouble(QString::fromStdString(why.text())); }
    void onRecovered() override { tellTrouble({}); }

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
    m_refresh.setSingleShot(true);
    connect(&m_refresh, &QTimer::timeout, this, &FiringSession::refreshForecast);
}

FiringSession::~FiringSession() {
    if (m_parts.instrument)
        m_parts.instrument->close();
    m_journal.reset(); // commits what waits, and tells no more
}

Result<std::unique_ptr<FiringSession>> FiringSession::make(Parts parts, const JournalMaker& journal) {
    std::unique_ptr<FiringSession> session(new FiringSession(std::move(parts)));
    if (const auto opened = session->open(journal); !opened)
        return opened.error();
    return session;
}

Status FiringSession::open(const JournalMaker& makeJournal) {
    auto journal = makeJournal(*m_diskNews);
    if (!journal)
        return journal.error();
    m_journal = std::move(journal).value();
    const auto probe = m_parts.record.probes.empty() ? nullptr : &m_parts.record.probes.front();
    for (const auto& pack : m_parts.record.packs)
        m_priors.push_back(offsetPriorFor(probe, pack.place, m_parts.filed));
    if (!m_parts.record.packs.empty()) {
        auto forecaster = FiringForecast::make(m_parts.record.packs, m_priors);
        if (!forecaster)
            return forecaster.error();
        m_forecaster.emplace(std::move(*forecaster));
    }
    m_firing = std::make_unique<LiveFiring>(std::move(m_parts.record), *m_journal, *m_parts.log);
    m_firing->setListener(this);
    if (const auto& plan = record().firing.plan) {
        PlanContext context;
        context.start = record().firing.began;
        context.kiln = kilnModelFor(record().kiln.ratedPower, record().kiln.ratedVolts);
        context.coneDown = [this](const Curve& whole, const std::string& cone) {
            return m_forecaster ? m_forecaster->coneDownOn(whole, cone) : std::nullopt;
        };
        m_follower.emplace(*plan, context);
    }
    followFromStart(record().firing.began);
    if (!m_parts.instrument)
        return {};
    if (const auto opened = m_parts.instrument->open(*this); !opened)
        return opened;
    advanceInstrument();
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
}

void FiringSession::onLine(const std::string& line, bool understood) {
    Q_EMIT rawLine(QString::fromStdString(line), understood);
}

void FiringSession::onLink(LinkState state, const std::string& detail) {
    m_link = state;
    m_linkDetail = QString::fromStdString(detail);
    Q_EMIT linkChanged();
}

void FiringSession::onReading(const Channel& channel, const Reading& reading) {
    const auto control = m_firing->controlChannel();
    if (control && channel.id == *control) {
        const CurvePoint point{reading.at, Temperature::fromCelsius(reading.value)};
        if (m_forecaster)
            m_forecaster->add(point);
        if (m_follower)
            m_follower->add(point);
        if (!m_refresh.isActive())
            m_refresh.start(m_forecast ? refresh_ms : 0);
    }
    Q_EMIT readingTaken();
}

void FiringSession::onLinesChanged(Instant from) {
    followFromStart(from);
    Q_EMIT linesChanged();
}

void FiringSession::followFromStart(Instant from) {
    const auto& curve = m_firing->controlCurve();
    if (m_forecaster && !m_forecaster->restart(curve, from, record().looks).ok())
        m_forecast.reset(); // a look out of the readings' reach: it counts once there are readings
    if (m_follower)
        m_follower->restart(curve, record().looks);
    refreshForecast();
}

void FiringSession::refreshForecast() {
    if (m_forecaster) {
        auto forecast = m_forecaster->forecast(follower());
        if (forecast)
            m_forecast = std::move(*forecast);
        else
            m_forecast.reset();
    }
    m_doubts = m_forecast ? doubtfulLooks(*m_forecaster, record().looks, *m_forecast, follower())
                          : std::vector<LookDoubt>();
    Q_EMIT forecastChanged();
}

Status FiringSession::end() {
    if (m_parts.instrument)
        m_parts.instrument->close();
    m_advance.stop();
    if (!m_firing)
        return failed("the firing was never opened");
    if (const auto filed = fileOffsets(); !filed)
        return filed;
    return m_firing->end(now());
}

/// What each pack's looks told of the probe is the next firing's prior.
Status FiringSession::fileOffsets() {
    if (!m_forecast || record().probes.empty())
        return {};
    for (std::size_t i = 0; i < record().packs.size(); ++i) {
        const auto& pack = record().packs[i];
        const bool looked = std::ranges::any_of(
            record().looks, [&](const Look& look) { return look.pack == pack.id && !look.struck; });
        if (!looked)
            continue;
        const auto& told = m_forecast->packs[i];
        const FiledOffset offset{
            record().firing.id, record().kiln.id, record().probes.front().id, pack.place, now(),
            told.offsetMean,    told.offsetSd};
        if (const auto kept = m_parts.log->file(offset); !kept)
            return kept;
    }
    return {};
}

} // namespace ringhold
