#include "ui/alarm/quiet_bar.h"

#include "ui/alarm/live_alarms.h"
#include "ui/session/preferences.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace ringhold {

QuietBar::QuietBar(LiveAlarms& alarms, const Preferences& preferences, QWidget* parent)
    : QFrame(parent), m_alarms(alarms), m_preferences(preferences), m_words(new QLabel) {
    setProperty("ground", QStringLiteral("forecast"));
    setAccessibleName(tr("Quiet hours"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(28, 4, 26, 4);
    row->addWidget(m_words, 1);
    auto* end = new QPushButton(tr("Sound again"));
    end->setAutoDefault(false);
    row->addWidget(end);
    connect(end, &QPushButton::clicked, &alarms, &LiveAlarms::endQuiet);
    connect(&alarms, &LiveAlarms::changed, this, &QuietBar::refresh);
    connect(&preferences, &Preferences::changed, this, &QuietBar::refresh);
    refresh();
}

void QuietBar::refresh() {
    const auto until = m_alarms.quietUntil();
    if (until)
        m_words->setText(tr("Quiet until %1, as you chose. Urgent alarms sound all the same.")
                             .arg(m_preferences.clockTime(*until)));
    setVisible(until.has_value());
}

} // namespace ringhold
