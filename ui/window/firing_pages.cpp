#include "ui/window/firing_pages.h"

#include "ui/instrument/instrument_page.h"
#include "ui/session/notebook.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/strip.h"
#include "ui/spyhole/spyhole_page.h"
#include "ui/start/begin_page.h"

#include <QPointer>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ringhold {

FiringPages::FiringPages(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QStackedWidget(parent), m_notebook(notebook), m_theme(theme), m_stripColumn(new QWidget),
      m_strips(new QVBoxLayout(m_stripColumn)), m_begin(new BeginPage(notebook, theme)),
      m_instruments(new InstrumentPage(notebook, theme)) {
    m_strips->setContentsMargins(0, 0, 0, 0);
    m_strips->setSpacing(0);
    m_stripColumn->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed); // pages shrink, strips do not
    addWidget(m_begin);
    addWidget(m_instruments);
    connect(m_begin, &BeginPage::instrumentWanted, this, &FiringPages::chooseInstrument);
    connect(&notebook, &Notebook::sessionsChanged, this, &FiringPages::matchSessions);
    connect(this, &QStackedWidget::currentChanged, this, &FiringPages::markStrips);
    matchSessions();
}

void FiringPages::matchSessions() {
    const auto& sessions = m_notebook.sessions();
    std::vector<Shown> gone;
    std::erase_if(m_shown, [&](const auto& entry) {
        const bool live =
            std::ranges::any_of(sessions, [&](const auto& s) { return s.get() == entry.first; });
        if (!live)
            gone.push_back(entry.second);
        return !live;
    });
    for (auto& shown : gone) // before a layout asks one of a session that is gone
        delete std::exchange(shown.strip, nullptr);
    for (const auto& shown : gone)
        takeDown(shown);
    const FiringSession* newest = nullptr;
    for (const auto& session : sessions)
        if (!m_shown.contains(session.get())) {
            put(*session);
            newest = session.get();
        }
    if (newest)
        showFiring(*newest);
    else
        showFiring();
    markStrips();
}

void FiringPages::put(FiringSession& session) {
    auto* strip = new Strip(session, m_notebook.preferences(), m_theme);
    auto* spread = new SpreadPage(session, m_notebook, m_theme);
    auto* spyhole = new SpyholePage(session, m_notebook.preferences(), m_theme);
    m_shown[&session] = {strip, spread, spyhole};
    m_strips->addWidget(strip);
    addWidget(spread);
    addWidget(spyhole);
    connect(strip, &Strip::wanted, this, [this, &session] {
        showFiring(session);
        Q_EMIT wanted();
    });
    connect(strip, &Strip::menuWanted, this, [this, &session](const QPoint& at) {
        showFiring(session);
        Q_EMIT wanted();
        Q_EMIT menuWanted(at);
    });
    connect(spyhole, &SpyholePage::finished, this, [this, spread] { setCurrentWidget(spread); });
    connect(spread, &SpreadPage::spyholeWanted, this, &FiringPages::openSpyhole);
    connect(spread, &SpreadPage::troubled, this, &FiringPages::troubled);
}

/// The begin page first comes to the front, so that nothing of it is shown while it goes. Its session may be
/// gone already and is asked nothing any more.
void FiringPages::takeDown(const Shown& shown) {
    delete shown.strip;
    if (currentWidget() == shown.spread || currentWidget() == shown.spyhole)
        setCurrentWidget(m_begin);
    delete shown.spyhole;
    delete shown.spread;
}

void FiringPages::markStrips() {
    const FiringSession* current = currentSession();
    const bool several = m_shown.size() > 1;
    for (const auto& [session, shown] : m_shown)
        shown.strip->setStanding(!several             ? Strip::Standing::alone
                                 : session == current ? Strip::Standing::shown
                                                      : Strip::Standing::beside);
    if (std::exchange(m_marked, current) != current)
        Q_EMIT currentSessionChanged();
}

SpreadPage* FiringPages::spreadOf(const FiringSession& session) const {
    const auto found = m_shown.find(&session);
    return found == m_shown.end() ? nullptr : found->second.spread;
}

SpreadPage* FiringPages::currentSpread() const {
    for (const auto& [session, shown] : m_shown)
        if (currentWidget() == shown.spread || currentWidget() == shown.spyhole)
            return shown.spread;
    return nullptr;
}

FiringSession* FiringPages::currentSession() const {
    auto* spread = currentSpread();
    return spread ? &spread->session() : nullptr;
}

void FiringPages::showBegin() {
    setCurrentWidget(m_begin);
}

void FiringPages::showFiring() {
    if (auto* spread = currentSpread())
        setCurrentWidget(spread);
    else if (!m_notebook.sessions().empty())
        showFiring(*m_notebook.sessions().back());
    else
        showBegin();
}

void FiringPages::showFiring(const FiringSession& session) {
    if (auto* spread = spreadOf(session))
        setCurrentWidget(spread);
}

void FiringPages::showNext(int further) {
    const auto& sessions = m_notebook.sessions();
    if (sessions.empty())
        return;
    const auto count = static_cast<int>(sessions.size());
    const auto* current = currentSession();
    const auto found = std::ranges::find_if(sessions, [&](const auto& s) { return s.get() == current; });
    const int from =
        found == sessions.end() ? (further > 0 ? -1 : 0) : static_cast<int>(found - sessions.begin());
    showAt(static_cast<std::size_t>((from + further + count) % count));
}

void FiringPages::showAt(std::size_t place) {
    if (place >= m_notebook.sessions().size())
        return;
    showFiring(*m_notebook.sessions()[place]);
    Q_EMIT wanted();
}

void FiringPages::openSpyhole() {
    showFiring();
    auto* session = currentSession();
    if (!session)
        return;
    auto* spyhole = m_shown.at(session).spyhole;
    setCurrentWidget(spyhole);
    spyhole->begin();
}

void FiringPages::chooseInstrument() {
    Q_EMIT wanted();
    auto* before = currentWidget();
    if (before == m_instruments)
        return;
    auto* session = currentSession();
    m_instruments->disconnect(this);
    connect(m_instruments, &InstrumentPage::finished, this,
            [this, back = QPointer<QWidget>(before)] { setCurrentWidget(back ? back.data() : m_begin); });
    if (!session)
        connect(m_instruments, &InstrumentPage::chosen, m_begin, &BeginPage::setInstrument,
                Qt::UniqueConnection);
    else
        disconnect(m_instruments, &InstrumentPage::chosen, m_begin, nullptr);
    m_instruments->begin(session, m_begin->instrument());
    setCurrentWidget(m_instruments);
}

void FiringPages::endFiring() {
    auto* session = currentSession();
    if (!session)
        return;
    const auto firing = static_cast<qlonglong>(session->record().firing.id);
    takeDown(m_shown.extract(session).mapped());
    if (const auto done = m_notebook.end(*session); !done) {
        Q_EMIT troubled(QString::fromStdString(done.error().text()));
        matchSessions();
        return;
    }
    Q_EMIT ended(firing);
}

} // namespace ringhold
