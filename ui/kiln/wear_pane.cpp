#include "ui/kiln/wear_pane.h"

#include "ui/common/dates.h"
#include "ui/common/fitted_table.h"
#include "ui/common/words_on_page.h"
#include "ui/kiln/health_words.h"
#include "ui/kiln/kiln_firings_model.h"

#include <QVBoxLayout>

namespace ringhold {

WearPane::WearPane(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_firings(new KilnFiringsModel(preferences, this)),
      m_words(new QLabel), m_table(new FittedTable) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    m_words->setWordWrap(true);
    m_words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(m_words);
    m_table->setModel(m_firings);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setAccessibleName(tr("Firings of this kiln"));
    m_table->setColumns({{12.5, 0}, {9, 1}, {8, 0}, {6.5, 0}, {15, 1}, {7, 0}, {9, 0}, {14, 3}});
    column->addWidget(m_table, 1);
    column->addWidget(softLabel(tr("Intervals are of 90 %. Enter opens a firing.")));
    connect(m_table, &QAbstractItemView::activated, this, [this](const QModelIndex& at) {
        Q_EMIT firingWanted(static_cast<qlonglong>(m_firings->firing(at.row()).firing.id));
    });
}

QString WearPane::words() const {
    return m_words->text();
}

void WearPane::show(const std::vector<KilnFiring>& firings, const std::vector<Probe>& probes,
                    std::optional<Instant> elementsFitted) {
    std::vector<FiringHealth> healths;
    for (const auto& firing : firings)
        healths.push_back(firing.health);
    const KilnHealth health = kilnHealth(healths, elementsFitted);
    QStringList lines;
    if (elementsFitted)
        lines << tr("Elements fitted on %1.").arg(shortDate(*elementsFitted, m_preferences));
    lines << climbWords(health, m_preferences) << elementWords(health) << energyWords(health);
    for (const auto& probe : probes) {
        const auto own = healthByProbe(firings, probe.id);
        if (!own.empty() && !probe.retired)
            lines << probeWords(QString::fromStdString(probe.label), probeHealth(own, probe.fitted),
                                m_preferences);
    }
    lines.removeAll(QString());
    m_words->setText(lines.join(QLatin1Char('\n')));
    m_firings->show(firings);
}

} // namespace ringhold
