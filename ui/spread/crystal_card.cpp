#include "ui/spread/crystal_card.h"

#include "ui/common/words_on_page.h"
#include "ui/plan/crystal_view.h"
#include "ui/spread/live_crystal.h"

#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

namespace ringhold {

CrystalCard::CrystalCard(const LiveCrystalModel& model, const Theme& theme, QWidget* parent)
    : QFrame(parent), m_model(model), m_theme(theme), m_view(new CrystalView(theme)),
      m_growth(new QToolButton), m_size(softLabel()) {
    setProperty("card", true);
    setAccessibleName(tr("The crystal so far"));
    m_view->setObjectName(QStringLiteral("liveCrystal"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 8, 12, 8);
    column->setSpacing(4);
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::large, tr("Crystal")), 1);
    head->addWidget(m_growth, 0, Qt::AlignTop);
    column->addLayout(head);
    column->addWidget(m_view, 1);
    m_size->setWordWrap(true);
    column->addWidget(m_size);
    m_growth->setText(tr("&Growth"));
    m_growth->setToolTip(
        tr("Each ring’s radius, width and temperature, and when to dip for another (Alt+G)"));
    m_growth->setCheckable(true);
    m_growth->setProperty("choice", true);
    m_growth->setProperty("size", QStringLiteral("small"));
    connect(m_growth, &QToolButton::toggled, this, &CrystalCard::growthWanted);
    connect(&model, &LiveCrystalModel::changed, this, &CrystalCard::refresh);
    connect(&theme, &Theme::changed, this, &CrystalCard::refresh);
    refresh();
}

void CrystalCard::foldGrowth() {
    m_growth->setChecked(false);
}

void CrystalCard::refresh() {
    const auto& crystal = m_model.crystal();
    m_view->show(crystal ? std::optional(crystal->drawn) : std::nullopt);
    m_size->setFont(m_theme.text(TextSize::small));
    m_size->setText(crystal ? sizeWords(crystal->drawn) + QStringLiteral("; ") + sourceWords(crystal->drawn)
                            : QString());
    setVisible(crystal.has_value());
    if (!crystal)
        foldGrowth();
}

} // namespace ringhold
