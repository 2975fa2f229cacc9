#include "ui/spread/writing_line.h"

#include "ui/common/key_hint.h"
#include "ui/common/tone.h"
#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

namespace ringhold {

namespace {

QString kindName(LineKind kind) {
    switch (kind) {
    case LineKind::note:
        return WritingLine::tr("note");
    case LineKind::reading:
        return WritingLine::tr("reading");
    case LineKind::look:
        return WritingLine::tr("look");
    case LineKind::setting:
        return WritingLine::tr("setting");
    default:
        return {};
    }
}

QString hint(LineKind kind) {
    switch (kind) {
    case LineKind::note:
        return WritingLine::tr("Opened the damper a little, 3 min ago");
    case LineKind::reading:
        return WritingLine::tr("1201, or 18:03 1201");
    case LineKind::look:
        return WritingLine::tr("10 3.5, or 9 down, 10 2");
    case LineKind::setting:
        return WritingLine::tr("damper: half open");
    default:
        return WritingLine::tr("Write here …");
    }
}

} // namespace

WritingLine::WritingLine(ContextMaker context, Describe describe, const Theme& theme, QWidget* parent)
    : QFrame(parent), m_context(std::move(context)), m_describe(std::move(describe)), m_theme(theme),
      m_kindWords(new QLabel), m_edit(new QLineEdit), m_meaning(new QLabel), m_hints(makeHints()) {
    setProperty("card", true);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 4, 14, 4);
    row->setSpacing(10);
    m_edit->setAccessibleName(tr("Writing line"));
    m_edit->setProperty("bare", true);
    m_edit->installEventFilter(this);
    m_meaning->setAccessibleName(tr("What the line will be"));
    row->addWidget(m_kindWords);
    row->addWidget(m_edit, 1);
    row->addWidget(m_meaning);
    row->addWidget(m_hints);
    setFocusProxy(m_edit);
    connect(m_edit, &QLineEdit::textEdited, this, &WritingLine::understand);
    connect(m_edit, &QLineEdit::returnPressed, this, &WritingLine::write);
    connect(&theme, &Theme::changed, this, &WritingLine::dress);
    begin(LineKind::open);
    m_edit->clearFocus();
    dress();
}

QWidget* WritingLine::makeHints() {
    auto* hints = new QWidget;
    auto* row = new QHBoxLayout(hints);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(14);
    const auto add = [&](Qt::Key key, const QString& word, auto onClick) {
        auto* hint = new KeyHint(m_theme, QKeySequence(Qt::ALT | key), word);
        connect(hint, &KeyHint::clicked, this, onClick);
        row->addWidget(hint);
    };
    add(Qt::Key_R, kindName(LineKind::reading), [this] { begin(LineKind::reading); });
    add(Qt::Key_L, tr("spyhole"), [this] { Q_EMIT spyholeWanted(); });
    add(Qt::Key_D, tr("cone down"), [this] { Q_EMIT coneDownWanted(); });
    add(Qt::Key_N, kindName(LineKind::note), [this] { begin(LineKind::note); });
    add(Qt::Key_S, kindName(LineKind::setting), [this] { begin(LineKind::setting); });
    return hints;
}

void WritingLine::begin(LineKind kind) {
    m_kind = kind;
    m_kindWords->setText(kindName(kind));
    m_kindWords->setVisible(kind != LineKind::open);
    m_edit->setPlaceholderText(hint(kind));
    m_edit->setFocus(Qt::ShortcutFocusReason);
    understand();
}

void WritingLine::begin(LineKind kind, const QString& text) {
    m_edit->setText(text);
    begin(kind);
    m_edit->end(false); // taking the keyboard has selected it
}

void WritingLine::kept() {
    m_edit->clear();
    begin(LineKind::open);
}

void WritingLine::refuse(const QString& why) {
    m_bad = true;
    m_meaning->setText(why);
    dress();
}

void WritingLine::tell(const QString& what) {
    m_bad = false;
    m_meaning->setText(what);
    m_edit->setFocus(Qt::ShortcutFocusReason);
    dress();
}

void WritingLine::understand() {
    m_bad = false;
    const bool empty = m_edit->text().trimmed().isEmpty();
    m_hints->setVisible(empty);
    if (empty) {
        m_meaning->clear();
    } else {
        const auto line = readWrittenLine(m_edit->text().toStdString(), m_kind, m_context());
        m_bad = !line;
        m_meaning->setText(line ? m_describe(*line) : QString::fromStdString(line.error().what));
    }
    dress();
}

void WritingLine::write() {
    if (m_edit->text().trimmed().isEmpty())
        return;
    const auto line = readWrittenLine(m_edit->text().toStdString(), m_kind, m_context());
    if (line)
        Q_EMIT written(*line);
    else
        refuse(QString::fromStdString(line.error().what));
}

bool WritingLine::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_edit && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Escape) {
            m_edit->clear();
            begin(LineKind::open);
            return true;
        }
        if (key->matches(QKeySequence::Undo) && m_edit->text().isEmpty()) {
            Q_EMIT undoWanted();
            return true;
        }
        if (key->matches(QKeySequence::Redo) && m_edit->text().isEmpty()) {
            Q_EMIT redoWanted();
            return true;
        }
    }
    return QFrame::eventFilter(watched, event);
}

void WritingLine::dress() {
    m_edit->setFont(m_theme.text(TextSize::large));
    m_meaning->setFont(m_theme.text(TextSize::body));
    m_kindWords->setFont(m_theme.text(TextSize::body, QFont::DemiBold));
    setTone(m_meaning, m_bad ? Tone::warning : Tone::soft);
}

} // namespace ringhold
