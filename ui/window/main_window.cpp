#include "ui/window/main_window.h"

#include "ui/exchange/file_exchange.h"
#include "ui/glaze/glaze_page.h"
#include "ui/instrument/instrument_page.h"
#include "ui/kiln/kilns_page.h"
#include "ui/past/past_page.h"
#include "ui/plan/plan_page.h"
#include "ui/session/notebook.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/strip.h"
#include "ui/spyhole/spyhole_page.h"
#include "ui/start/begin_page.h"
#include "ui/theme/theme.h"
#include "ui/theme/theme_follower.h"
#include "ui/ware/ware_page.h"
#include "ui/window/notice_bar.h"
#include "ui/window/ribbon.h"

#include <QActionGroup>
#include <QApplication>
#include <QButtonGroup>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QPointer>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

MainWindow::MainWindow(Notebook& notebook, Theme& theme, QWidget* parent)
    : QMainWindow(parent), m_notebook(notebook), m_theme(theme), m_follower(new ThemeFollower(theme, *qApp)),
      m_exchange(new FileExchange(notebook, theme, *this)), m_strips(new QVBoxLayout),
      m_notice(new NoticeBar(theme)), m_pages(new QStackedWidget), m_firings(new QStackedWidget),
      m_begin(new BeginPage(notebook, theme)), m_ribbonColumn(new QVBoxLayout),
      m_ribbons(new QButtonGroup(this)) {
    setWindowTitle(QStringLiteral("Ringhold · ") +
                   QString::fromStdString(notebook.file().filename().string()));
    setMinimumSize(1024, 640);
    resize(1280, 800);
    auto* table = new QWidget;
    auto* column = new QVBoxLayout(table);
    column->setContentsMargins(0, 0, 0, 14);
    column->setSpacing(0);
    m_strips->setSpacing(0);
    column->addLayout(m_strips);
    column->addWidget(m_notice);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(20, 12, 26, 0);
    row->setSpacing(0);
    row->addWidget(m_pages, 1);
    m_ribbonColumn->setSpacing(6);
    m_ribbonColumn->setContentsMargins(0, 14, 0, 0);
    row->addLayout(m_ribbonColumn);
    column->addLayout(row, 1);
    setCentralWidget(table);
    m_firings->addWidget(m_begin);
    addInstrumentPage();
    addSpread(tr("Firing"), [this] { return m_firings; });
    addSpread(tr("Plan"), [this] { return new PlanPage(m_notebook, m_theme); });
    addSpread(tr("Ware"), [this] { return new WarePage(m_notebook, m_theme); });
    addSpread(tr("Past"), [this] { return new PastPage(m_notebook, m_theme); });
    addSpread(tr("Kilns"), [this] {
        auto* kilns = new KilnsPage(m_notebook, m_theme);
        connect(kilns, &KilnsPage::firingWanted, this, &MainWindow::showPast);
        return kilns;
    });
    addSpread(tr("Glazes"), [this] {
        auto* glazes = new GlazePage(m_notebook, m_theme);
        connect(glazes, &GlazePage::firingWanted, this, &MainWindow::showPast);
        return glazes;
    });
    m_ribbonColumn->addStretch(1);
    addMenus();
    connect(m_exchange, &FileExchange::brought, this, &MainWindow::showPast);
    connect(m_exchange, &FileExchange::troubled, this, &MainWindow::tell);
    connect(&notebook, &Notebook::sessionsChanged, this, &MainWindow::matchSessions);
    connect(&notebook.preferences(), &Preferences::changed, this, &MainWindow::chooseTheme);
    chooseTheme();
    matchSessions();
    open(tr("Firing"));
}

MainWindow::~MainWindow() = default;

void MainWindow::addSpread(const QString& words, const PageMaker& make) {
    const int index = m_pages->addWidget(make());
    auto* ribbon = new Ribbon(words, QKeySequence(QStringLiteral("Alt+%1").arg(index + 1)), m_theme);
    m_ribbons->addButton(ribbon, index);
    m_ribbonColumn->addWidget(ribbon);
    connect(ribbon, &Ribbon::clicked, this, [this, index] { m_pages->setCurrentIndex(index); });
}

QStringList MainWindow::spreads() const {
    QStringList words;
    for (const auto* ribbon : m_ribbons->buttons())
        words << ribbon->text();
    return words;
}

void MainWindow::open(const QString& spread) {
    for (auto* ribbon : m_ribbons->buttons())
        if (ribbon->text() == spread) {
            ribbon->setChecked(true);
            m_pages->setCurrentIndex(m_ribbons->id(ribbon));
        }
}

void MainWindow::tell(const QString& trouble) {
    m_notice->tell(trouble);
}

void MainWindow::addMenus() {
    auto* firing = menuBar()->addMenu(tr("&Firing"));
    firing->addAction(tr("&New firing"), QKeySequence(QStringLiteral("Ctrl+N")), this, [this] {
        open(tr("Firing"));
        m_firings->setCurrentWidget(m_begin);
    });
    firing->addAction(tr("&Back to the firing"), QKeySequence(QStringLiteral("Alt+F")), this,
                      &MainWindow::showFiring);
    firing->addAction(tr("&Instrument …"), QKeySequence(QStringLiteral("Ctrl+I")), this,
                      &MainWindow::chooseInstrument);
    firing->addAction(tr("&End this firing"), this, &MainWindow::endFiring);
    firing->addAction(tr("B&ring in a file …"), QKeySequence(QStringLiteral("Ctrl+I")), m_exchange,
                      &FileExchange::choose);
    firing->addSeparator();
    firing->addAction(tr("&Close the window"), QKeySequence::Quit, this, &QWidget::close);
    auto* write = menuBar()->addMenu(tr("&Write"));
    const auto addWriting = [&](const QString& words, const char* key, LineKind kind) {
        write->addAction(words, QKeySequence(QLatin1String(key)), this, [this, kind] {
            showFiring();
            if (auto* spread = currentSpread())
                spread->beginWriting(kind);
        });
    };
    addWriting(tr("&Reading"), "Alt+R", LineKind::reading);
    addWriting(tr("&Note"), "Alt+N", LineKind::note);
    addWriting(tr("&Setting"), "Alt+S", LineKind::setting);
    addWriting(tr("Looks on the &line"), "Alt+K", LineKind::look);
    write->addSeparator();
    write->addAction(tr("&Look through the spyhole"), QKeySequence(QStringLiteral("Alt+L")), this,
                     &MainWindow::openSpyhole);
    write->addAction(tr("The firing cone is &down"), QKeySequence(QStringLiteral("Alt+D")), this, [this] {
        showFiring();
        if (auto* spread = currentSpread())
            spread->writeConeDown();
    });
    addReminderChoices(*write->addMenu(tr("Re&mind of readings and looks")));
    auto* view = menuBar()->addMenu(tr("&View"));
    auto& preferences = m_notebook.preferences();
    const auto addChoice = [&](const QString& words, auto set) {
        view->addAction(words, this, [this, set] {
            if (const auto kept = set(); !kept)
                tell(QString::fromStdString(kept.error().text()));
        });
    };
    addChoice(tr("&Paper"), [&preferences] { return preferences.setTheme(ThemeChoice::paper); });
    addChoice(tr("&Ember"), [&preferences] { return preferences.setTheme(ThemeChoice::ember); });
    addChoice(tr("As the &system"), [&preferences] { return preferences.setTheme(ThemeChoice::system); });
    view->addSeparator();
    addChoice(tr("Degrees &Celsius"),
              [&preferences] { return preferences.setUnit(TemperatureUnit::celsius); });
    addChoice(tr("Degrees &Fahrenheit"),
              [&preferences] { return preferences.setUnit(TemperatureUnit::fahrenheit); });
    view->addSeparator();
    view->addAction(tr("&Larger text"), QKeySequence::ZoomIn, this,
                    [this] { m_theme.setTextScale(m_theme.textScale() * 1.1); });
    view->addAction(tr("S&maller text"), QKeySequence::ZoomOut, this,
                    [this] { m_theme.setTextScale(m_theme.textScale() / 1.1); });
}

void MainWindow::addReminderChoices(QMenu& menu) {
    auto& preferences = m_notebook.preferences();
    auto* choices = new QActionGroup(&menu);
    for (const int minutes : {5, 10, 15, 20, 30, 45, 60}) {
        auto* choice = menu.addAction(tr("every %1 min").arg(minutes), this, [this, minutes] {
            const auto kept = m_notebook.preferences().setReminderInterval(std::chrono::minutes(minutes));
            if (!kept)
                tell(QString::fromStdString(kept.error().text()));
        });
        choice->setCheckable(true);
        choice->setData(minutes);
        choices->addAction(choice);
    }
    connect(&menu, &QMenu::aboutToShow, this, [&preferences, choices] {
        for (auto* choice : choices->actions())
            choice->setChecked(std::chrono::minutes(choice->data().toInt()) ==
                               preferences.reminderInterval());
    });
}

void MainWindow::chooseTheme() {
    m_follower->choose(m_notebook.preferences().theme());
}

void MainWindow::matchSessions() {
    const auto& sessions = m_notebook.sessions();
    std::erase_if(m_stripOf, [&](const auto& entry) {
        const bool live =
            std::ranges::any_of(sessions, [&](const auto& s) { return s.get() == entry.first; });
        if (!live)
            takeDown(entry.first, entry.second);
        return !live;
    });
    for (const auto& session : sessions) {
        if (m_stripOf.contains(session.get()))
            continue;
        auto* strip = new Strip(*session, m_notebook.preferences(), m_theme);
        auto* spread = new SpreadPage(*session, m_notebook, m_theme);
        m_stripOf[session.get()] = strip;
        m_spreadOf[session.get()] = spread;
        m_strips->addWidget(strip);
        auto* spyhole = new SpyholePage(*session, m_notebook.preferences(), m_theme);
        m_spyholeOf[session.get()] = spyhole;
        m_firings->addWidget(spread);
        m_firings->addWidget(spyhole);
        connect(spyhole, &SpyholePage::finished, this,
                [this, spread] { m_firings->setCurrentWidget(spread); });
        connect(spread, &SpreadPage::spyholeWanted, this, &MainWindow::openSpyhole);
        connect(spread, &SpreadPage::troubled, this, &MainWindow::tell);
    }
    showFiring();
}

/// All that looks at a session; the begin page first comes to the front, so that nothing of it is shown while
/// it goes.
void MainWindow::takeDown(const FiringSession* session, Strip* strip) {
    m_firings->setCurrentWidget(m_begin);
    delete strip;
    delete m_spyholeOf[session];
    m_spyholeOf.erase(session);
    delete m_spreadOf[session];
    m_spreadOf.erase(session);
}

SpreadPage* MainWindow::spreadOf(const FiringSession& session) const {
    const auto found = m_spreadOf.find(&session);
    return found == m_spreadOf.end() ? nullptr : found->second;
}

SpreadPage* MainWindow::currentSpread() const {
    if (const auto* spyhole = qobject_cast<const SpyholePage*>(m_firings->currentWidget()))
        return spreadOf(spyhole->session());
    return qobject_cast<SpreadPage*>(m_firings->currentWidget());
}

void MainWindow::openSpyhole() {
    showFiring();
    auto* spread = currentSpread();
    if (!spread)
        return;
    auto* spyhole = m_spyholeOf.at(&spread->session());
    m_firings->setCurrentWidget(spyhole);
    spyhole->begin();
}

void MainWindow::addInstrumentPage() {
    m_instruments = new InstrumentPage(m_notebook, m_theme);
    m_firings->addWidget(m_instruments);
    auto* begin = qobject_cast<BeginPage*>(m_begin);
    connect(begin, &BeginPage::instrumentWanted, this, &MainWindow::chooseInstrument);
}

/// For the firing that is shown, or for the one that is to begin.
void MainWindow::chooseInstrument() {
    open(tr("Firing"));
    auto* before = m_firings->currentWidget();
    if (before == m_instruments)
        return;
    auto* spread = currentSpread();
    auto* begin = qobject_cast<BeginPage*>(m_begin);
    m_instruments->disconnect(this);
    connect(m_instruments, &InstrumentPage::finished, this, [this, back = QPointer<QWidget>(before)] {
        m_firings->setCurrentWidget(back ? back.data() : m_begin);
    });
    if (!spread)
        connect(m_instruments, &InstrumentPage::chosen, begin, &BeginPage::setInstrument,
                Qt::UniqueConnection);
    else
        disconnect(m_instruments, &InstrumentPage::chosen, begin, nullptr);
    m_instruments->begin(spread ? &spread->session() : nullptr, begin->instrument());
    m_firings->setCurrentWidget(m_instruments);
}

void MainWindow::showFiring() {
    open(tr("Firing"));
    if (auto* spread = currentSpread()) {
        m_firings->setCurrentWidget(spread);
        return;
    }
    const auto& sessions = m_notebook.sessions();
    m_firings->setCurrentWidget(sessions.empty() ? m_begin : m_spreadOf.at(sessions.back().get()));
}

void MainWindow::showPast(qlonglong firing) {
    open(tr("Past"));
    if (auto* past = findChild<PastPage*>())
        past->open(static_cast<FiringId>(firing));
}

void MainWindow::endFiring() {
    auto* spread = currentSpread();
    if (!spread)
        return;
    auto& session = spread->session();
    takeDown(&session, m_stripOf[&session]);
    m_stripOf.erase(&session);
    if (const auto ended = m_notebook.end(session); !ended) {
        tell(QString::fromStdString(ended.error().text()));
        matchSessions();
    }
}

} // namespace ringhold
