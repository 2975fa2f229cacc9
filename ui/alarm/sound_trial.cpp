#include "ui/alarm/sound_trial.h"

#include "ui/alarm/alarm_caller.h"
#include "ui/session/notebook.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include <algorithm>

namespace ringhold {

namespace {

constexpr const char* eventKind = "alarm sound";

constexpr const char* heardWord = "heard";

/// What the log has of it; nothing when it was never answered.
std::optional<bool> answered(const BookReader& reader, FiringId firing) {
    std::optional<bool> heard;
    if (const auto events = reader.events(firing))
        for (const auto& event : *events)
            if (event.kind == eventKind)
                heard = event.detail == heardWord;
    return heard;
}

} // namespace

SoundTrial::SoundTrial(Notebook& notebook, AlarmCaller& caller, QWidget* parent)
    : QFrame(parent), m_notebook(notebook), m_caller(caller), m_words(new QLabel), m_yes(new QPushButton),
      m_no(new QPushButton(tr("No"))) {
    setProperty("ground", QStringLiteral("forecast"));
    setAccessibleName(tr("Trial of the alarm's sound"));
    m_words->setWordWrap(true);
    auto* again = new QPushButton(tr("Play it again"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(28, 5, 26, 5);
    row->addWidget(m_words, 1);
    for (auto* button : {m_yes, m_no, again}) {
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    connect(m_yes, &QPushButton::clicked, this, [this] { answer(!m_silent); });
    connect(m_no, &QPushButton::clicked, this, [this] { answer(false); });
    connect(again, &QPushButton::clicked, this, &SoundTrial::ask);
    connect(&caller, &AlarmCaller::unheard, this, [this] { m_silent = true; });
    connect(&notebook, &Notebook::sessionsChanged, this, &SoundTrial::matchSessions);
    hide();
    matchSessions();
}

void SoundTrial::matchSessions() {
    const auto& sessions = m_notebook.sessions();
    bool fresh = false;
    for (const auto& session : sessions) {
        const auto id = session->record().firing.id;
        if (std::ranges::count(m_known, id) > 0)
            continue;
        m_known.push_back(id);
        if (const auto heard = answered(m_notebook.reader(), id)) {
            m_caller.setHeard(*heard);
            continue;
        }
        m_asking.push_back(id);
        fresh = true;
    }
    std::erase_if(m_asking, [&](FiringId id) {
        return std::ranges::none_of(sessions, [&](const auto& s) { return s->record().firing.id == id; });
    });
    if (fresh)
        ask();
    setVisible(!m_asking.empty());
}

void SoundTrial::ask() {
    m_silent = false;
    m_caller.setHeard(true);
    m_caller.sound(Sound::call);
    m_words->setText(m_silent
                         ? tr("This computer has no sound: alarms flash the window instead, as it did now.")
                         : tr("An alarm has just sounded. Did you hear it?"));
    m_yes->setText(m_silent ? tr("Seen") : tr("Yes"));
    m_no->setVisible(!m_silent);
}

void SoundTrial::answer(bool heard) {
    m_caller.setHeard(heard);
    const std::string told = heard      ? std::string(heardWord)
                             : m_silent ? tr("none on this computer, the window flashes").toStdString()
                                        : tr("not heard, the window flashes too").toStdString();
    for (const auto& session : m_notebook.sessions())
        if (const auto id = session->record().firing.id; std::ranges::count(m_asking, id) > 0) {
            // it is of use, but not worth stopping for: the next start asks again
            (void)m_notebook.writer().add(LogEvent{id, session->now(), eventKind, told});
            Q_EMIT session->alarmsKept(); // the log has more
        }
    m_asking.clear();
    hide();
}

} // namespace ringhold
