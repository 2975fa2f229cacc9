#include "ui/window/live_firings_menu.h"

#include "ui/session/notebook.h"
#include "ui/window/firing_pages.h"

#include <QAction>
#include <QMenu>

namespace ringhold {

namespace {

constexpr int withKey = 9;

} // namespace

LiveFiringsMenu::LiveFiringsMenu(Notebook& notebook, FiringPages& pages, QMenu& menu, QObject* parent)
    : QObject(parent), m_notebook(notebook), m_pages(pages) {
    menu.addAction(tr("&Next"), QKeySequence(Qt::CTRL | Qt::Key_Tab), this, [this] { m_pages.showNext(1); });
    menu.addAction(tr("&Previous"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backtab), this,
                   [this] { m_pages.showNext(-1); });
    menu.addSeparator();
    for (int place = 0; place < withKey; ++place) {
        auto* action = menu.addAction(QString(), QKeySequence(QStringLiteral("Ctrl+%1").arg(place + 1)), this,
                                      [this, place] { m_pages.showAt(static_cast<std::size_t>(place)); });
        action->setCheckable(true);
        m_firings << action;
    }
    connect(&notebook, &Notebook::sessionsChanged, this, &LiveFiringsMenu::refresh);
    connect(&pages, &FiringPages::currentSessionChanged, this, &LiveFiringsMenu::refresh);
    refresh();
}

void LiveFiringsMenu::refresh() {
    const auto& sessions = m_notebook.sessions();
    for (int place = 0; place < m_firings.size(); ++place) {
        auto* action = m_firings[place];
        const bool there = place < static_cast<int>(sessions.size());
        action->setVisible(there);
        if (!there)
            continue;
        const auto& session = sessions[static_cast<std::size_t>(place)];
        const auto& record = session->record();
        action->setText(QString::fromStdString(record.kiln.name + " · " + record.firing.title));
        action->setChecked(session.get() == m_pages.currentSession());
    }
}

} // namespace ringhold
