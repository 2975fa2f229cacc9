#include "ui/window/step_menu.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/strip_words.h"
#include "ui/window/firing_pages.h"

#include <QMenu>

namespace ringhold {

StepMenu::StepMenu(FiringPages& pages, const Preferences& preferences, QMenu& menu, QObject* parent)
    : QObject(parent), m_pages(pages), m_preferences(preferences), m_menu(menu) {
    connect(&menu, &QMenu::aboutToShow, this, &StepMenu::fill);
}

void StepMenu::fill() {
    m_menu.clear();
    const auto* session = m_pages.currentSession();
    const auto* follower = session ? session->follower() : nullptr;
    if (!follower) {
        m_menu.addAction(session ? tr("This firing has no plan") : tr("No firing is shown"))
            ->setEnabled(false);
        return;
    }
    const auto position = follower->position();
    const auto& steps = follower->plan().steps;
    const auto add = [&](const QString& words, std::size_t step, bool current) {
        auto* action = m_menu.addAction(words, this, [this, step] { correct(step); });
        action->setCheckable(true);
        action->setChecked(current);
    };
    for (std::size_t i = 0; i < steps.size(); ++i)
        add(tr("%1. %2").arg(i + 1).arg(stepWords(steps[i], m_preferences)), i,
            position && position->step == i);
    add(tr("plan done"), steps.size(), follower->finished());
}

void StepMenu::correct(std::size_t step) {
    auto* session = m_pages.currentSession();
    if (!session)
        return;
    if (const auto kept = session->correctStep(step); !kept)
        Q_EMIT troubled(QString::fromStdString(kept.error().text()));
}

} // namespace ringhold
