#include "ui/window/main_window.h"

#include "ui/exchange/file_exchange.h"
#include "ui/glaze/glaze_page.h"
#include "ui/kiln/kilns_page.h"
#include "ui/past/paper_log_window.h"
#include "ui/past/past_page.h"
#include "ui/plan/plan_page.h"
#include "ui/report/log_sheet_window.h"
#include "ui/session/notebook.h"
#include "ui/spread/spread_page.h"
#include "ui/theme/theme.h"
#include "ui/theme/theme_follower.h"
#include "ui/ware/ware_page.h"
#include "ui/window/firing_pages.h"
#include "ui/window/hold_menu.h"
#include "ui/window/live_firings_menu.h"
#include "ui/window/notice_bar.h"
#include "ui/window/ribbon.h"
#include "ui/window/step_menu.h"
#include "ui/window/watch_desk.h"

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

MainWindow::MainWindow(Notebook& notebook, Theme& theme, Sounder* sounder, QWidget* parent)
    : QMainWindow(parent), m_notebook(notebook), m_theme(theme), m_follower(new ThemeFollower(theme, *qApp)),
      m_exchange(new FileExchange(notebook, theme, *this)), m_firings(new FiringPages(notebook, theme)),
      m_watch(new WatchDesk(notebook, theme, sounder ? *sounder : m_noSound, *this)),
      m_notice(new NoticeBar(theme)), m_pages(new QStackedWidget), m_ribbonColumn(new QVBoxLayout),
      m_ribbons(new QButtonGroup(this)) {
    setWindowTitle(QString::fromStdString(notebook.file().filename().string()));
    setMinimumSize(1024, 640);
    resize(1280, 800);
    auto* table = new QWidget;
    auto* column = new QVBoxLayout(table);
    column->setContentsMargins(0, 0, 0, 14);
    column->setSpacing(0);
    column->addWidget(m_watch->bars());
    column->addWidget(m_firings->strips());
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
    addSpread(tr("Firing"), [this] { return m_firings; });
    addSpread(tr("Plan"), [this] { return m_plan = new PlanPage(m_notebook, m_theme); });
    addSpread(tr("Ware"), [this] { return new WarePage(m_notebook, m_theme); });
    addSpread(tr("Past"), [this] { return m_past = new PastPage(m_notebook, m_theme); });
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
    connect(m_firings, &FiringPages::wanted, this, [this] { open(tr("Firing")); });
    connect(m_firings, &FiringPages::menuWanted, m_steps, [this](const QPoint& at) { m_steps->popup(at); });
    connect(m_firings, &FiringPages::ended, this, &MainWindow::showPast); // to be read, judged and reported
    connect(m_firings, &FiringPages::troubled, this, &MainWindow::tell);
    connect(m_watch, &WatchDesk::troubled, this, &MainWindow::tell);
    connect(m_watch, &WatchDesk::spyholeWanted, this, [this](FiringSession* session) {
        m_firings->showFiring(*session);
        openSpyhole();
    });
    connect(&notebook, &Notebook::sessionsChanged, this, [this] { open(tr("Firing")); });
    connect(&notebook.preferences(), &Preferences::changed, this, &MainWindow::chooseTheme);
    chooseTheme();
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
        m_firings->showBegin();
    });
    firing->addAction(tr("&Back to the firing"), QKeySequence(QStringLiteral("Alt+F")), this,
                      &MainWindow::showFiring);
    firing->addAction(tr("&Report"), QKeySequence(QStringLiteral("Ctrl+R")), this, &MainWindow::openReport);
    firing->addAction(tr("Blank log s&heet …"), this, &MainWindow::openLogSheet);
    firing->addAction(tr("&Instrument …"), QKeySequence(QStringLiteral("Ctrl+I")), m_firings,
                      &FiringPages::chooseInstrument);
    new LiveFiringsMenu(m_notebook, *m_firings, *firing->addMenu(tr("&Live firings")), this);
    m_steps = firing->addMenu(tr("The kiln is in &step"));
    auto* steps = new StepMenu(*m_firings, m_notebook.preferences(), *m_steps, this);
    connect(steps, &StepMenu::troubled, this, &MainWindow::tell);
    firing->addAction(tr("&End this firing"), m_firings, &FiringPages::endFiring);
    firing->addAction(tr("B&ring in a file …"), QKeySequence(QStringLiteral("Ctrl+B")), m_exchange,
                      &FileExchange::choose);
    firing->addSeparator();
    firing->addAction(tr("&Close the window"), QKeySequence::Quit, this, &QWidget::close);
    auto* write = menuBar()->addMenu(tr("&Write"));
    const auto addWriting = [&](const QString& words, const char* key, LineKind kind) {
        write->addAction(words, QKeySequence(QLatin1String(key)), this, [this, kind] {
            showFiring();
            if (auto* spread = m_firings->currentSpread())
                spread->beginWriting(kind);
        });
    };
    addWriting(tr("&Reading"), "Alt+R", LineKind::reading);
    addWriting(tr("&Note"), "Alt+N", LineKind::note);
    addWriting(tr("&Setting"), "Alt+S", LineKind::setting);
    addWriting(tr("Looks on the &line"), "Alt+K", LineKind::look);
    write->addAction(tr("A &meter’s stand"), QKeySequence(QStringLiteral("Ctrl+M")), this, [this] {
        showFiring();
        if (auto* spread = m_firings->currentSpread())
            spread->beginMeter();
    });
    write->addSeparator();
    write->addAction(tr("From a &paper log …"), this, &MainWindow::typePaperLog);
    write->addAction(tr("&Look through the spyhole"), QKeySequence(QStringLiteral("Alt+L")), this,
                     &MainWindow::openSpyhole);
    write->addAction(tr("The firing cone is &down"), QKeySequence(QStringLiteral("Alt+D")), this, [this] {
        showFiring();
        if (auto* spread = m_firings->currentSpread())
            spread->writeConeDown();
    });
    addReminderChoices(*write->addMenu(tr("Re&mind of readings and looks")));
    auto* alarms = m_watch->addMenu(*menuBar());
    auto* holds =
        new HoldMenu(*m_firings, m_notebook.preferences(), *alarms->addMenu(tr("The &hold’s band")), this);
    connect(holds, &HoldMenu::troubled, this, &MainWindow::tell);
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

SpreadPage* MainWindow::spreadOf(const FiringSession& session) const {
    return m_firings->spreadOf(session);
}

void MainWindow::openReport() {
    const bool reading = m_pages->currentWidget() == m_past;
    auto* spread = reading ? nullptr : m_firings->currentSpread();
    open(tr("Past"));
    m_past->openReport(spread ? std::optional(spread->session().record().firing.id) : std::nullopt);
}

void MainWindow::openLogSheet() {
    auto* spread = m_firings->currentSpread();
    LogSheetWindow::open(this, spread ? &spread->session() : nullptr, m_plan->plan(),
                         m_notebook.preferences());
}

void MainWindow::typePaperLog() {
    if (auto* spread = m_firings->currentSpread()) {
        const auto opened = PaperLogWindow::open(m_notebook, spread->session().record().firing.id, this);
        return opened ? void() : tell(QString::fromStdString(opened.error().text()));
    }
    open(tr("Past"));
    m_past->typePaperLog();
}

void MainWindow::showFiring() {
    open(tr("Firing"));
    m_firings->showFiring();
}

void MainWindow::showPast(qlonglong firing) {
    open(tr("Past"));
    m_past->open(static_cast<FiringId>(firing));
}

void MainWindow::openSpyhole() {
    open(tr("Firing"));
    m_firings->openSpyhole();
}

} // namespace ringhold
