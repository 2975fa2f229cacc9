#include "ui/spyhole/spyhole_page.h"

#include "ui/common/doubt_list.h"
#include "ui/common/word_style.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spyhole/spyhole_panel.h"

#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

SpyholePage::SpyholePage(FiringSession& session, const Preferences& preferences, const Theme& theme,
                         QWidget* parent)
    : QWidget(parent), m_session(session), m_preferences(preferences), m_model(outside()),
      m_panel(new SpyholePanel(theme, m_model, this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(8);
    all->addWidget(new DoubtList(session, preferences));
    all->addWidget(m_panel, 1);
    setFocusProxy(m_panel);
    connect(m_panel, &SpyholePanel::finished, this, &SpyholePage::finished);
    // unseen, it has nothing to reckon
    connect(&session, &FiringSession::linesChanged, this, [this] {
        if (isVisible())
            takeFiring();
    });
    const auto refresh = [this] {
        if (isVisible())
            m_model.refresh();
    };
    connect(&session, &FiringSession::forecastChanged, this, refresh);
    connect(&preferences, &Preferences::changed, this, refresh);
}

SpyholeModel::Outside SpyholePage::outside() {
    return {[this](const std::vector<Look>& looks) { return preview(looks); },
            [this] { return m_session.now(); },
            [this](const Look& look) {
                const auto id = m_session.firing().writeLook(look.pack, look.at, look.cone, look.hour);
                return id ? Status() : Status(id.error());
            },
            [this] { return styleOf(m_preferences); }};
}

Result<LookPreview> SpyholePage::preview(const std::vector<Look>& looks) const {
    const auto& without = m_session.forecast();
    if (!m_session.forecaster() || !without)
        return Error{ErrorKind::failed, "it needs a pack and two readings"};
    if (looks.empty())
        return LookPreview{*without, *without};
    auto with = m_session.forecaster()->forecastWith(looks, m_session.follower());
    if (with)
        return LookPreview{*without, *with};
    const auto last = m_session.firing().lastReading();
    if (last && std::ranges::max(looks, {}, &Look::at).at > last->at)
        return Error{ErrorKind::badInput, tr("the last reading is of %1; write one, and the look counts")
                                              .arg(m_preferences.clockTime(last->at))
                                              .toStdString()};
    return with.error();
}

void SpyholePage::takeFiring() {
    m_model.setFiring(m_session.record().packs, m_session.record().looks, firingConeOf(m_session));
}

void SpyholePage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    takeFiring();
}

void SpyholePage::begin() {
    m_panel->begin();
}

} // namespace ringhold
