#include "ui/window/hold_menu.h"

#include "core/watch/told_hold.h"
#include "ui/common/word_style.h"
#include "ui/session/firing_session.h"
#include "ui/session/glaze_of_firing.h"
#include "ui/spread/spread_page.h"
#include "ui/window/firing_pages.h"

#include <QMenu>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double offered_C[] = {2, 3, 4, 6, 10};

} // namespace

HoldMenu::HoldMenu(FiringPages& pages, const Preferences& preferences, QMenu& menu, QObject* parent)
    : QObject(parent), m_pages(pages), m_preferences(preferences), m_menu(menu) {
    connect(&menu, &QMenu::aboutToShow, this, &HoldMenu::fill);
}

void HoldMenu::fill() {
    m_menu.clear();
    const auto* session = m_pages.currentSession();
    const auto* hold =
        session && session->watch().holdUnderWay() ? &*session->watch().holdUnderWay() : nullptr;
    if (!hold) {
        m_menu.addAction(session ? tr("The kiln is not held just now") : tr("No firing is shown"))
            ->setEnabled(false);
        return;
    }
    addGlazeBand(hold->band);
    for (const double half_C : offered_C) {
        const HoldBand band{hold->band.target, TemperatureDifference::fromCelsius(half_C)};
        addBand(band, {}, hold->source != HoldSource::curve && hold->band.halfWidth == band.halfWidth);
    }
    if (hold->source == HoldSource::plan)
        return;
    m_menu.addSeparator();
    m_menu.addAction(tr("the hold is &over"), this, [this] { say("over"); });
}

void HoldMenu::addBand(const HoldBand& band, const QString& words, bool current) {
    const QString told = QString::fromStdString(toldHoldWords(band, styleOf(m_preferences)));
    auto* action = m_menu.addAction(words.isEmpty() ? told : told + QStringLiteral(" · ") + words, this,
                                    [this, told] { say(told.toStdString()); });
    action->setCheckable(true);
    action->setChecked(current);
}

/// What the answers at unloading say of the glaze that most pieces carry.
void HoldMenu::addGlazeBand(const HoldBand& hold) {
    const auto* spread = m_pages.currentSpread();
    const auto known = spread ? spread->glaze().known() : std::nullopt;
    if (!known || !known->knowledge.visible.told)
        return;
    const auto& visible = known->knowledge.visible;
    addBand({hold.target, TemperatureDifference::fromCelsius(std::max(1.0, std::round(visible.offered_C)))},
            tr("beyond it excursions begin to show in %1, by %2 answers")
                .arg(QString::fromStdString(known->name))
                .arg(visible.answers),
            false);
    m_menu.addSeparator();
}

void HoldMenu::say(const std::string& value) {
    auto* session = m_pages.currentSession();
    if (!session)
        return;
    const auto written = session->firing().writeSetting(session->now(), holdSetting, value);
    if (!written)
        Q_EMIT troubled(QString::fromStdString(written.error().text()));
}

} // namespace ringhold
