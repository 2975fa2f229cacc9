#include "ui/spread/right_page.h"

#include "ui/common/words_on_page.h"
#include "ui/cones/pack_view.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/advice_panel.h"
#include "ui/spread/crystal_card.h"
#include "ui/spread/crystal_panel.h"
#include "ui/spread/curve_view.h"
#include "ui/spread/heat_card.h"
#include "ui/spread/live_crystal.h"
#include "ui/spread/supply_line.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int repaint_ms = 200;
constexpr int leastForBoth = 470; ///< of height; below, the close-up stands for the whole

/// The last looks of a pack and the model's ghosts, as they are drawn.
DrawnPack drawnPack(const Pack& pack, const std::vector<Look>& looks, const PackForecast* forecast) {
    DrawnPack drawn;
    drawn.leansLeft = pack.leansLeft;
    for (std::size_t i = 0; i < pack.cones.size(); ++i) {
        DrawnCone cone;
        cone.name = QString::fromStdString(pack.cones[i]);
        for (const auto& look : looks)
            if (look.pack == pack.id && look.cone == pack.cones[i] && !look.struck)
                cone.hour = look.hour;
        if (forecast) {
            const auto& hour = forecast->cones[i].hourNow;
            cone.ghost = GhostCone{hour.median, hour.p05, hour.p95};
        }
        drawn.cones.push_back(cone);
    }
    return drawn;
}

} // namespace

RightPage::RightPage(FiringSession& session, const Preferences& preferences, const Theme& theme,
                     QWidget* parent)
    : QFrame(parent), m_session(session), m_theme(theme),
      m_whole(new CurveView(session, preferences, theme, CurveSpan::whole)),
      m_closeUp(new CurveView(session, preferences, theme, CurveSpan::closeUp)),
      m_supply(new SupplyLine(session, preferences, theme)),
      m_advice(new AdvicePanel(session, preferences, theme)),
      m_heat(new HeatCard(session, preferences, theme)), m_crystal(new LiveCrystalModel(session, this)),
      m_growth(new CrystalPanel(*m_crystal, preferences, theme)),
      m_crystalCard(new CrystalCard(*m_crystal, theme)) {
    setObjectName(QStringLiteral("rightPage"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 10, 14, 12);
    column->setSpacing(8);
    column->addWidget(m_whole, 5);
    column->addWidget(m_closeUp, 4);
    column->addWidget(m_supply);
    column->addWidget(m_advice);
    column->addWidget(m_growth, 4);
    column->addLayout(makeCards(), 3);
    m_advice->hide();
    m_growth->hide();
    connect(&session, &FiringSession::forecastChanged, this, &RightPage::refreshPacks);
    m_repaint.setSingleShot(true);
    connect(&m_repaint, &QTimer::timeout, this, &RightPage::refreshCurves);
    const auto later = [this] {
        if (!m_repaint.isActive() && isVisible())
            m_repaint.start(repaint_ms);
    };
    for (auto signal : {&FiringSession::readingTaken, &FiringSession::linesChanged,
                        &FiringSession::forecastChanged, &FiringSession::durableChanged})
        connect(&session, signal, this, later);
    connect(m_supply, &SupplyLine::meterWanted, this, &RightPage::meterWanted);
    connect(m_heat, &HeatCard::adviceWanted, this, &RightPage::unfoldAdvice);
    connect(m_advice, &AdvicePanel::folded, m_heat, &HeatCard::foldAdvice);
    connect(m_advice, &AdvicePanel::troubled, this, &RightPage::troubled);
    connect(m_crystalCard, &CrystalCard::growthWanted, this, &RightPage::unfoldGrowth);
    connect(m_growth, &CrystalPanel::folded, m_crystalCard, &CrystalCard::foldGrowth);
    connect(m_crystal, &LiveCrystalModel::changed, this, &RightPage::placeCards);
    refreshPacks();
    placeCards();
}

QLayout* RightPage::makeCards() {
    auto* cards = new QHBoxLayout;
    cards->setSpacing(12);
    for (const auto& pack : m_session.record().packs) {
        auto* card = new QFrame;
        card->setProperty("card", true);
        auto* inside = new QVBoxLayout(card);
        inside->setContentsMargins(12, 8, 12, 8);
        inside->addWidget(new Heading(m_theme, TextSize::large, QString::fromStdString(pack.place)));
        m_packs.push_back(new PackView(m_theme));
        inside->addWidget(m_packs.back(), 1);
        cards->addWidget(card, 1);
        m_packCards.push_back(card);
    }
    cards->addWidget(m_heat, 2);
    cards->addWidget(m_crystalCard, 1);
    return cards;
}

void RightPage::setGrowthRate(const GrowthRate& rate) {
    m_crystal->setRate(rate);
}

void RightPage::refreshPacks() {
    const auto& record = m_session.record();
    for (std::size_t i = 0; i < m_packs.size(); ++i) {
        const auto* forecast = m_session.forecast() ? &m_session.forecast()->packs[i] : nullptr;
        m_packs[i]->setPack(drawnPack(record.packs[i], record.looks, forecast));
    }
}

/// Once a crystal grows no cone moves any more: it takes their place.
void RightPage::placeCards() {
    for (auto* card : m_packCards)
        card->setVisible(!m_crystal->crystal());
}

/// As with the advice, of which there is one at a time.
void RightPage::unfoldGrowth(bool unfolded) {
    if (unfolded)
        m_heat->foldAdvice();
    m_growth->setVisible(unfolded);
    refreshCurves();
    if (unfolded)
        m_growth->begin();
}

/// The close-up gives its room to the advice.
void RightPage::unfoldAdvice(bool unfolded) {
    if (unfolded)
        m_crystalCard->foldGrowth();
    m_advice->setVisible(unfolded);
    refreshCurves();
    if (unfolded)
        m_advice->begin();
}

void RightPage::showEvent(QShowEvent* event) {
    QFrame::showEvent(event);
    refreshCurves();
}

void RightPage::refreshCurves() {
    bool close = false;
    if (const auto* follower = m_session.follower(); follower && follower->position()) {
        const auto& step = follower->plan().steps[follower->position()->step];
        close = !std::holds_alternative<Climb>(step) && !std::holds_alternative<Cool>(step);
    }
    close = (close || m_session.watch().holdToKeep()) && m_advice->isHidden() && m_growth->isHidden();
    const bool roomForBoth = height() >= leastForBoth;
    m_closeUp->setVisible(close);
    m_whole->setVisible(!close || roomForBoth);
    for (auto* curve : {m_whole, m_closeUp})
        if (!curve->isHidden())
            curve->refresh();
}

} // namespace ringhold
