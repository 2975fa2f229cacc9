#include "ui/window/watch_desk.h"

#include "ui/alarm/alarm_bar.h"
#include "ui/alarm/alarm_curtain.h"
#include "ui/alarm/alarm_list.h"
#include "ui/alarm/quiet_bar.h"
#include "ui/alarm/ring_cue.h"
#include "ui/alarm/sound_trial.h"
#include "ui/alarm/window_flash.h"
#include "ui/glance/glance_view.h"
#include "ui/session/notebook.h"

#include <QActionGroup>
#include <QMenuBar>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int flashes = 4;

} // namespace

WatchDesk::WatchDesk(Notebook& notebook, const Theme& theme, Sounder& sounder, QWidget& window)
    : QObject(&window), m_notebook(notebook), m_alarms(notebook), m_caller(m_alarms, sounder),
      m_bars(new QWidget), m_bar(new AlarmBar(m_alarms, notebook.preferences(), theme, m_bars)),
      m_list(new AlarmList(m_alarms, notebook, theme, &window)),
      m_glance(new GlanceView(notebook, m_alarms, theme, &window)) {
    auto* flash = new WindowFlash(theme, window);
    auto* glanceFlash = new WindowFlash(theme, *m_glance);
    connect(&m_caller, &AlarmCaller::unheard, this, [flash, glanceFlash](Sound sound) {
        flash->flash(sound == Sound::cue ? 1 : flashes);
        glanceFlash->flash(sound == Sound::cue ? 1 : flashes);
    });
    auto* column = new QVBoxLayout(m_bars);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(m_bar);
    column->addWidget(new QuietBar(m_alarms, notebook.preferences(), m_bars));
    column->addWidget(new SoundTrial(notebook, m_caller, m_bars));
    new RingCue(notebook, m_caller, this);
    auto* curtain = new AlarmCurtain(m_alarms, notebook.preferences(), theme, window);
    connect(curtain, &AlarmCurtain::spyholeWanted, this, &WatchDesk::spyholeWanted);
    connect(m_bar, &AlarmBar::spyholeWanted, this, &WatchDesk::spyholeWanted);
    connect(m_bar, &AlarmBar::listWanted, m_list, &AlarmList::open);
}

QMenu* WatchDesk::addMenu(QMenuBar& bar) {
    auto* menu = bar.addMenu(tr("Alar&ms"));
    menu->addAction(tr("&Acknowledge"), QKeySequence(Qt::Key_F8), m_bar, &AlarmBar::acknowledge);
    menu->addAction(tr("&All alarms"), QKeySequence(Qt::Key_F9), m_list, &AlarmList::open);
    menu->addSeparator();
    addQuietChoices(*menu->addMenu(tr("&Quiet, but for urgent ones")));
    addAttendanceChoices(*menu->addMenu(tr("&Nobody at the kiln")));
    menu->addAction(tr("&Try the sound"), this, [this] { m_caller.sound(Sound::call); });
    menu->addSeparator();
    menu->addAction(tr("At a &glance"), QKeySequence(Qt::Key_F11), m_glance, &GlanceView::toggle);
    return menu;
}

void WatchDesk::addQuietChoices(QMenu& menu) {
    for (const int hours : {1, 4, 8})
        menu.addAction(hours == 1 ? tr("for an hour") : tr("for %1 hours").arg(hours), this,
                       [this, hours] { m_alarms.keepQuietFor(std::chrono::hours(hours)); });
    menu.addSeparator();
    menu.addAction(tr("no longer"), &m_alarms, &LiveAlarms::endQuiet);
}

void WatchDesk::addAttendanceChoices(QMenu& menu) {
    auto& preferences = m_notebook.preferences();
    auto* choices = new QActionGroup(&menu);
    for (const int minutes : {0, 30, 60, 90, 120}) {
        const auto wanted =
            minutes == 0 ? std::nullopt : std::optional<Duration>(std::chrono::minutes(minutes));
        auto* choice =
            menu.addAction(minutes == 0 ? tr("say nothing") : tr("say so after %1 min").arg(minutes), this,
                           [this, &preferences, wanted] {
                               if (const auto kept = preferences.setAttendanceInterval(wanted); !kept)
                                   Q_EMIT troubled(QString::fromStdString(kept.error().text()));
                           });
        choice->setCheckable(true);
        choices->addAction(choice);
        connect(&menu, &QMenu::aboutToShow, choice, [choice, wanted, &preferences] {
            choice->setChecked(preferences.attendanceInterval() == wanted);
        });
    }
}

} // namespace ringhold
