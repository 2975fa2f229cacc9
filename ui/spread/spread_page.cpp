#include "ui/spread/spread_page.h"

#include "core/cones/bending.h"
#include "core/watch/setting_answer.h"
#include "ui/common/tone.h"
#include "ui/common/words_on_page.h"
#include "ui/session/firing_cone.h"
#include "ui/session/glaze_of_firing.h"
#include "ui/session/notebook.h"
#include "ui/spread/kept_lines.h"
#include "ui/spread/line_words.h"
#include "ui/spread/log_model.h"
#include "ui/spread/log_view.h"
#include "ui/spread/look_reminder.h"
#include "ui/spread/reading_reminder.h"
#include "ui/spread/right_page.h"
#include "ui/spread/strip_words.h"
#include "ui/spread/writing_line.h"
#include "ui/theme/theme.h"

#include <QLabel>
#include <QSplitter>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ringhold {

namespace {

constexpr Duration answersEvery = std::chrono::minutes(1); ///< of what the curve says to a setting
constexpr Duration answersFor = std::chrono::minutes(22);  ///< it goes on answering

std::vector<SettingAnswer> answersOf(const FiringSession& session) {
    return settingAnswers(session.record().settings, session.firing().controlCurve());
}

QString whatWords(const FiringRecord& record) {
    QStringList parts;
    if (!record.pieces.empty())
        parts << (record.pieces.size() == 1 ? SpreadPage::tr("one piece")
                                            : SpreadPage::tr("%1 pieces").arg(record.pieces.size()));
    if (record.firing.plan)
        parts << SpreadPage::tr("plan “%1”").arg(QString::fromStdString(record.firing.plan->name));
    parts << QString::fromStdString(record.kiln.name);
    return parts.join(QStringLiteral(" · "));
}

} // namespace

SpreadPage::SpreadPage(FiringSession& session, Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_session(session), m_notebook(notebook), m_theme(theme),
      m_date(new Heading(theme, TextSize::large, notebook.preferences().date(session.record().firing.began))),
      m_what(new QLabel), m_logModel(new LogModel(this)), m_log(new LogView(theme)),
      m_right(new RightPage(session, notebook.preferences(), theme)),
      m_glaze(new GlazeOfFiring(session, notebook, this)),
      m_line(new WritingLine([this] { return writingContext(); },
                             [this](const WrittenLine& line) {
                                 return describedLine(line, m_notebook.preferences(),
                                                      m_session.record().kiln.fuel);
                             },
                             theme)) {
    auto* book = new QSplitter(Qt::Horizontal);
    book->setObjectName(QStringLiteral("book"));
    book->addWidget(makeLeftPage());
    book->addWidget(m_right);
    book->setStretchFactor(0, 1);
    book->setStretchFactor(1, 2);
    book->setSizes({400, 800});
    book->setChildrenCollapsible(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    column->addWidget(book, 1);
    addReminders(*column);
    column->addWidget(m_line);
    connect(&session, &FiringSession::linesChanged, this, &SpreadPage::refreshLog);
    connect(&session, &FiringSession::alarmsKept, this, &SpreadPage::refreshLog);
    connect(&notebook.preferences(), &Preferences::changed, this, &SpreadPage::refreshLog);
    connect(&session, &FiringSession::forecastChanged, this, &SpreadPage::refreshRemarks);
    m_looksNoted = looksThatCount();
    m_note.setSingleShot(true);
    connect(&m_note, &QTimer::timeout, this, &SpreadPage::noteForecast);
    connect(&session, &FiringSession::linesChanged, this, [this] { m_note.start(0); });
    connect(m_line, &WritingLine::written, this, &SpreadPage::write);
    connect(m_line, &WritingLine::undoWanted, this, [this] {
        if (const auto keys = m_undo.undo())
            mark(*keys, true);
    });
    connect(m_line, &WritingLine::redoWanted, this, [this] {
        if (const auto keys = m_undo.redo())
            mark(*keys, false);
    });
    connect(m_line, &WritingLine::spyholeWanted, this, &SpreadPage::spyholeWanted);
    connect(m_line, &WritingLine::coneDownWanted, this, &SpreadPage::writeConeDown);
    connect(m_glaze, &GlazeOfFiring::changed, this, [this] { m_right->setGrowthRate(m_glaze->rate()); });
    connect(m_right, &RightPage::meterWanted, this, &SpreadPage::beginMeter);
    connect(m_right, &RightPage::troubled, this, &SpreadPage::troubled);
    connect(m_log, &LogView::strikeWanted, this, &SpreadPage::strikeRow);
    connect(&theme, &Theme::changed, this, &SpreadPage::dress);
    dress();
    refreshLog();
}

void SpreadPage::addReminders(QVBoxLayout& column) {
    auto* look = new LookReminder(m_session, m_notebook.preferences(), this);
    auto* reading = new ReadingReminder(m_session, m_notebook.preferences(), this);
    column.addWidget(look);
    column.addWidget(reading);
    connect(look, &ReminderBar::actWanted, this, &SpreadPage::spyholeWanted);
    connect(reading, &ReminderBar::actWanted, this, [this] { beginWriting(LineKind::reading); });
}

QWidget* SpreadPage::makeLeftPage() {
    auto* page = new QFrame;
    page->setObjectName(QStringLiteral("leftPage"));
    page->setMinimumWidth(260);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(24, 16, 16, 12);
    column->setSpacing(2);
    m_what->setWordWrap(true);
    m_date->setWordWrap(true);
    column->addWidget(m_date);
    column->addWidget(m_what);
    column->addSpacing(8);
    m_log->setModel(m_logModel);
    column->addWidget(m_log, 1);
    return page;
}

void SpreadPage::dress() {
    m_what->setFont(m_theme.text(TextSize::small));
    setTone(m_what, Tone::soft);
    m_what->setText(whatWords(m_session.record()));
}

void SpreadPage::beginWriting(LineKind kind) {
    m_line->begin(kind);
}

void SpreadPage::beginMeter() {
    m_line->begin(LineKind::setting, QStringLiteral("meter: "));
}

WritingContext SpreadPage::writingContext() const {
    WritingContext context;
    context.now = m_session.now();
    context.zone = m_notebook.preferences().zone();
    context.fahrenheit = m_notebook.preferences().unit() == TemperatureUnit::fahrenheit;
    for (const auto& pack : m_session.record().packs)
        context.cones.insert(context.cones.end(), pack.cones.begin(), pack.cones.end());
    return context;
}

void SpreadPage::write(const WrittenLine& line) {
    if (const auto done = keepLine(m_session.firing(), withUnit(line, m_notebook.preferences())); done)
        m_line->kept();
    else
        m_line->refuse(QString::fromStdString(done.error().text()));
}

void SpreadPage::writeConeDown() {
    const auto* forecast = firingConeForecast(m_session);
    const auto cone = forecast ? std::optional(forecast->cone) : firingConeOf(m_session);
    const auto context = writingContext();
    if (!cone || std::ranges::count(context.cones, *cone) == 0) {
        Q_EMIT troubled(tr("No cone that stands in the kiln is waited for: write the look on the line."));
        return;
    }
    const WrittenLine line{WrittenLooks{{{*cone, hourDown}}}, context.now};
    if (const auto done = keepLine(m_session.firing(), line); !done)
        Q_EMIT troubled(QString::fromStdString(done.error().text()));
    else
        m_line->tell(tr("Cone %1 down, %2, is written · Ctrl+Z strikes it")
                         .arg(QString::fromStdString(*cone), m_notebook.preferences().clockTime(line.at)));
}

std::size_t SpreadPage::looksThatCount() const {
    return static_cast<std::size_t>(std::ranges::count(m_session.record().looks, false, &Look::struck));
}

/// A look says so: nothing is forecast of it any more.
bool SpreadPage::firingConeIsDown() const {
    const auto* forecast = firingConeForecast(m_session);
    return forecast && std::ranges::any_of(m_session.record().looks, [&](const Look& look) {
               return !look.struck && look.hour >= hourDown && look.cone == forecast->cone;
           });
}

void SpreadPage::noteForecast() {
    const std::size_t looks = looksThatCount();
    const bool more = looks > std::exchange(m_looksNoted, looks);
    const auto words = stripWords(m_session, m_notebook.preferences());
    if (!more || words.coneWhen.isEmpty() || firingConeIsDown())
        return;
    QString line = words.coneCaption + QLatin1Char(' ') + words.coneWhen;
    line[0] = line[0].toUpper();
    if (!words.coneBetween.isEmpty())
        line += QStringLiteral(", ") + words.coneBetween;
    const LogEvent event{m_session.record().firing.id, m_session.record().looks.back().at, "forecast",
                         line.toStdString()};
    if (const auto kept = m_notebook.writer().add(event); !kept)
        Q_EMIT troubled(QString::fromStdString(kept.error().text()));
    refreshLog();
}

void SpreadPage::strikeRow(int row) {
    const auto line = m_logModel->line(row);
    mark(line.keys, !line.struck);
}

void SpreadPage::mark(const std::vector<LineKey>& keys, bool struck) {
    for (const auto& key : keys)
        if (const auto done = strikeLine(m_session.firing(), key, m_session.now(), !struck); !done)
            Q_EMIT troubled(QString::fromStdString(done.error().text()));
}

void SpreadPage::refreshLog() {
    m_answersTold = m_session.now();
    const auto id = m_session.record().firing.id;
    const auto reader = m_notebook.reader();
    const auto events = reader.events(id);
    const auto alarms = reader.alarms(id);
    auto lines = pageLines(m_session.record(), events ? *events : std::vector<LogEvent>(),
                           alarms ? *alarms : std::vector<AlarmRecord>(), m_notebook.preferences(),
                           m_session.lookDoubts(), answersOf(m_session));
    m_undo.see(lines);
    m_logModel->setLines(std::move(lines), m_notebook.preferences());
    m_right->refreshPacks();
}

/// Readings may bring a doubt, or take it away, and tell what a setting did; lines come with linesChanged().
void SpreadPage::refreshRemarks() {
    std::vector<LookId> doubted;
    for (const auto& doubt : m_session.lookDoubts())
        doubted.push_back(doubt.look.id);
    const bool answering = !m_session.record().settings.empty() &&
                           m_session.now() - m_session.record().settings.back().at <= answersFor &&
                           m_session.now() - m_answersTold >= answersEvery;
    if (std::exchange(m_doubted, doubted) != doubted || answering)
        refreshLog();
}

} // namespace ringhold
