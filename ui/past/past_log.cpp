#include "ui/past/past_log.h"

#include "core/book/offsets_refiled.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/spread/log_model.h"
#include "ui/spread/log_view.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

PastLog::PastLog(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_model(new LogModel(this)), m_log(new LogView(theme)),
      m_note(new QLineEdit), m_trouble(new Remark(Remark::Kind::warning)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    m_log->setModel(m_model);
    m_log->setAccessibleName(tr("Log of the firing"));
    m_log->setToolTip(tr("Delete strikes the line that is picked, or takes that back"));
    m_log->installEventFilter(this);
    column->addWidget(m_log, 1);
    column->addWidget(m_trouble);
    column->addWidget(makeFoot());
    connect(m_log, &LogView::strikeWanted, this, &PastLog::strikeRow);
}

QWidget* PastLog::makeFoot() {
    auto* foot = new QWidget;
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    m_note->setPlaceholderText(tr("A note, as of now"));
    m_note->setAccessibleName(tr("A note to this firing"));
    m_note->installEventFilter(this);
    row->addWidget(m_note, 1);
    auto* paper = new QPushButton(tr("From a paper lo&g …"));
    paper->setAutoDefault(false);
    paper->setToolTip(tr("Type in readings and lines that were written on paper"));
    row->addWidget(paper);
    connect(m_note, &QLineEdit::returnPressed, this, &PastLog::addNote);
    connect(paper, &QPushButton::clicked, this, &PastLog::paperWanted);
    return foot;
}

void PastLog::show(std::shared_ptr<const OpenedFiring> firing) {
    const bool same = m_firing && firing && m_firing->record.firing.id == firing->record.firing.id;
    m_firing = std::move(firing);
    auto lines =
        m_firing ? pageLines(m_firing->record, m_firing->events, m_firing->alarms, m_notebook.preferences())
                 : std::vector<PageLine>();
    if (!same) {
        m_undo = {};
        m_note->clear();
        m_trouble->say({});
    }
    m_undo.see(lines);
    m_model->setLines(std::move(lines), m_notebook.preferences());
    m_note->setEnabled(m_firing && m_firing->record.firing.ended);
}

void PastLog::strikeRow(int row) {
    const auto line = m_model->line(row);
    markAndTell(line.keys, !line.struck);
}

void PastLog::markAndTell(const std::vector<LineKey>& keys, bool struck) {
    if (m_firing && m_firing->record.firing.ended)
        return tell(mark(keys, struck));
    m_trouble->say(tr("This firing is live: strike its lines on the Firing page."));
}

Status PastLog::mark(const std::vector<LineKey>& keys, bool struck) {
    auto writer = m_notebook.writer();
    const Instant when = m_notebook.clock().now();
    const auto markOne = [&](const auto& id) -> Status {
        if constexpr (std::is_same_v<decltype(id), const ReadingKey&>) {
            const auto done = struck ? writer.strikeReadings(id.channel, id.at, id.at, when)
                                     : writer.restoreReadings(id.channel, id.at, id.at, when);
            return done ? Status() : Status(done.error());
        } else {
            return struck ? writer.strike(id, when) : writer.restore(id, when);
        }
    };
    for (const auto& key : keys)
        if (const Status done = std::visit(markOne, key); !done)
            return done;
    if (!std::ranges::any_of(keys, [](const LineKey& key) { return std::holds_alternative<LookId>(key); }))
        return {};
    const auto filed = refileOffsets(m_notebook.book(), m_firing->record.firing.id);
    return filed ? Status() : Status(filed.error());
}

void PastLog::addNote() {
    const auto words = m_note->text().trimmed().toStdString();
    if (!m_firing || words.empty())
        return;
    const auto added =
        m_notebook.writer().add(Note{{}, m_firing->record.firing.id, m_notebook.clock().now(), words, false});
    if (added)
        m_note->clear();
    tell(added ? Status() : Status(added.error()));
}

void PastLog::tell(const Status& done) {
    m_trouble->say(done ? QString() : QString::fromStdString(done.error().text()));
    Q_EMIT written();
}

bool PastLog::undoByKey(const QKeyEvent& key) {
    const bool undo = key.matches(QKeySequence::Undo);
    if (!undo && !key.matches(QKeySequence::Redo))
        return false;
    if (const auto keys = undo ? m_undo.undo() : m_undo.redo())
        markAndTell(*keys, undo);
    return true;
}

bool PastLog::eventFilter(QObject* watched, QEvent* event) {
    const bool here = watched == m_log || (watched == m_note && m_note->text().isEmpty());
    if (here && event->type() == QEvent::KeyPress && undoByKey(*static_cast<const QKeyEvent*>(event)))
        return true;
    return QWidget::eventFilter(watched, event);
}

} // namespace ringhold
