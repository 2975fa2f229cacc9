#include "ui/alarm/live_alarms.h"

#include "ui/session/notebook.h"

#include <algorithm>
#include <tuple>

namespace ringhold {

namespace {

constexpr int tick_ms = 1000;

auto orderOf(const LiveAlarm& live) {
    return std::tuple(!live.calls(), live.alarm.over(), -static_cast<int>(live.alarm.level),
                      live.alarm.first);
}

} // namespace

bool LiveAlarm::isSame(const LiveAlarm& other) const {
    return session == other.session && alarm.cause == other.alarm.cause &&
           alarm.levelSince == other.alarm.levelSince;
}

LiveAlarms::LiveAlarms(Notebook& notebook, QObject* parent) : QObject(parent), m_notebook(notebook) {
    connect(&notebook, &Notebook::sessionsChanged, this, &LiveAlarms::matchSessions);
    connect(&m_tick, &QTimer::timeout, this, &LiveAlarms::refresh);
    m_tick.start(tick_ms);
    matchSessions();
}

void LiveAlarms::matchSessions() {
    for (const auto& session : m_notebook.sessions())
        connect(session.get(), &FiringSession::alarmsChanged, this, &LiveAlarms::refresh,
                Qt::UniqueConnection);
    refresh();
}

void LiveAlarms::refresh() {
    m_alarms.clear();
    for (const auto& session : m_notebook.sessions()) {
        const auto& board = session->alarms();
        const Instant now = session->now();
        for (const auto& alarm : board.alarms())
            m_alarms.push_back({session.get(), alarm, board.stageOf(alarm, now), now});
    }
    std::ranges::stable_sort(m_alarms, [](const auto& a, const auto& b) { return orderOf(a) < orderOf(b); });
    Q_EMIT changed();
}

AlarmStage LiveAlarms::stage() const {
    AlarmStage stage = AlarmStage::quiet;
    for (const auto& live : m_alarms)
        stage = std::max(stage, live.stage);
    return stage;
}

const LiveAlarm* LiveAlarms::loudest() const {
    return m_alarms.empty() || !m_alarms.front().calls() ? nullptr : &m_alarms.front();
}

void LiveAlarms::acknowledge(FiringSession& session, AlarmCause cause) {
    session.acknowledge(cause, who());
    refresh();
}

void LiveAlarms::acknowledgeAll() {
    for (const auto& session : m_notebook.sessions())
        session->acknowledgeAll(who());
    refresh();
}

void LiveAlarms::keepQuietFor(Duration length) {
    for (const auto& session : m_notebook.sessions())
        session->keepQuietUntil(session->now() + length);
    refresh();
}

void LiveAlarms::endQuiet() {
    for (const auto& session : m_notebook.sessions())
        session->keepQuietUntil(std::nullopt);
    refresh();
}

std::optional<Instant> LiveAlarms::quietUntil() const {
    for (const auto& session : m_notebook.sessions())
        if (const auto until = session->alarms().quietUntil(); until && session->now() < *until)
            return until;
    return std::nullopt;
}

QString LiveAlarms::who() const {
    for (const char* name : {"USER", "LOGNAME", "USERNAME"})
        if (const QString user = qEnvironmentVariable(name); !user.isEmpty())
            return user;
    return tr("the potter");
}

} // namespace ringhold
