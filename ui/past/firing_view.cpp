#include "ui/past/firing_view.h"

#include "core/report/report_curves.h"
#include "ui/common/cost_words.h"
#include "ui/common/firing_words.h"
#include "ui/common/words_on_page.h"
#include "ui/cones/pack_view.h"
#include "ui/past/cold_pack_entry.h"
#include "ui/past/curves_plot.h"
#include "ui/past/meter_entry.h"
#include "ui/past/paper_log_window.h"
#include "ui/past/past_log.h"
#include "ui/session/notebook.h"
#include "ui/ware/ware_model.h"
#include "ui/ware/ware_table.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QTabWidget>
#include <QVBoxLayout>

namespace ringhold {

namespace {

/// As last seen, cold packs included.
DrawnPack drawnPack(const Pack& pack, const std::vector<Look>& looks) {
    DrawnPack drawn;
    drawn.leansLeft = pack.leansLeft;
    for (const auto& name : pack.cones) {
        DrawnCone cone;
        cone.name = QString::fromStdString(name);
        for (const auto& look : looks)
            if (look.pack == pack.id && look.cone == name && !look.struck)
                cone.hour = look.hour;
        drawn.cones.push_back(cone);
    }
    return drawn;
}

void clear(QLayout& layout) {
    while (auto* item = layout.takeAt(0)) {
        delete item->widget();
        delete item;
    }
}

} // namespace

FiringView::FiringView(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_title(new Heading(theme, TextSize::title)),
      m_what(softLabel()), m_plot(new CurvesPlot(notebook.preferences(), theme)), m_tabs(new QTabWidget),
      m_log(new PastLog(notebook, theme)), m_ware(new WareModel(notebook, WareModel::Access::read, this)),
      m_packs(new QHBoxLayout), m_cold(new ColdPackEntry(notebook)), m_meter(new MeterEntry(notebook)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_title->setWordWrap(true);
    column->addWidget(m_title);
    column->addWidget(m_what);
    column->addWidget(m_plot, 3);
    m_tabs->addTab(m_log, tr("&Log"));
    m_tabs->addTab(makeCones(), tr("&Cones"));
    m_tabs->addTab(makeWare(), tr("&Ware"));
    m_tabs->addTab(m_meter, tr("&Meter"));
    connect(m_log, &PastLog::written, this, &FiringView::written);
    connect(m_log, &PastLog::paperWanted, this, &FiringView::typePaperLog);
    connect(m_meter, &MeterEntry::written, this, &FiringView::written);
    column->addWidget(m_tabs, 2);
    connect(&theme, &Theme::changed, this, &FiringView::draw);
    show(nullptr);
}

void FiringView::typePaperLog() {
    if (!m_firing)
        return;
    const auto opened = PaperLogWindow::open(m_notebook, m_firing->record.firing.id, this);
    if (!opened)
        Q_EMIT troubled(QString::fromStdString(opened.error().text()));
}

QWidget* FiringView::makeCones() {
    auto* cones = new QWidget;
    auto* row = new QHBoxLayout(cones);
    row->setContentsMargins(4, 4, 4, 4);
    row->setSpacing(16);
    row->addLayout(m_packs, 2);
    row->addWidget(m_cold, 3);
    connect(m_cold, &ColdPackEntry::written, this, &FiringView::written);
    return cones;
}

QWidget* FiringView::makeWare() {
    auto* ware = new WareTable(WareSheet::past);
    ware->setEditTriggers(QAbstractItemView::NoEditTriggers);
    ware->setModel(m_ware);
    ware->setAccessibleName(tr("Ware of the firing"));
    return ware;
}

void FiringView::show(std::shared_ptr<const OpenedFiring> firing) {
    m_firing = std::move(firing);
    m_plot->setVisible(m_firing != nullptr);
    m_tabs->setVisible(m_firing != nullptr);
    draw();
}

void FiringView::draw() {
    if (!m_firing) {
        m_title->say(tr("No firing is open"));
        m_what->setText(tr(
            "Past firings are read here: pick one on the left, or tick some to lay them over each other."));
        return;
    }
    showHead();
    showCurves();
    showCones();
    showWare();
    m_meter->show(m_firing);
    m_log->show(m_firing);
}

void FiringView::showHead() {
    const auto& record = m_firing->record;
    const auto& preferences = m_notebook.preferences();
    m_title->say(firingTitle(record.firing));
    QStringList parts{QString::fromStdString(record.kiln.name),
                      preferences.date(record.firing.began) + QLatin1Char(' ') +
                          preferences.clockTime(record.firing.began)};
    parts << (record.firing.ended ? preferences.span(*record.firing.ended - record.firing.began)
                                  : tr("fired now"));
    if (const auto& peak = m_firing->figures.peak)
        parts << tr("peak %1 at %2")
                     .arg(preferences.temperature(peak->temperature), preferences.clockTime(peak->at));
    if (m_firing->probe)
        parts << tr("by %1").arg(QString::fromStdString(m_firing->probe->label));
    if (record.firing.plan)
        parts << tr("plan “%1”").arg(QString::fromStdString(record.firing.plan->name));
    parts << costWords(m_firing->use, static_cast<int>(record.pieces.size()));
    parts.removeAll(QString());
    m_what->setText(parts.join(QStringLiteral(" · ")));
}

void FiringView::showCurves() {
    const auto& palette = m_theme.palette();
    std::vector<DrawnCurve> curves;
    if (auto followed = followPlan(m_firing->record, m_firing->control, {}))
        curves.push_back({std::make_shared<const Curve>(std::move(followed->drawn)),
                          {},
                          m_firing->control.empty() ? QString() : tr("plan"),
                          QPen(palette.plan, 1.4, Qt::DashLine)});
    for (const auto& other : m_firing->others)
        curves.push_back({std::shared_ptr<const Curve>(m_firing, &other), {}, {}, QPen(palette.soft, 1.2)});
    curves.push_back(
        {std::shared_ptr<const Curve>(m_firing, &m_firing->control), {}, {}, QPen(palette.kiln, 2.2)});
    std::vector<DrawnLook> looks;
    for (const auto& look : m_firing->record.looks)
        if (!look.struck && !look.cold && look.hour > 0 && !m_firing->control.empty())
            looks.push_back({look.at, temperatureAt(m_firing->control, look.at), look.hour});
    m_plot->setAccessibleName(tr("Curve of the firing"));
    m_plot->show(std::move(curves), std::move(looks));
}

void FiringView::showCones() {
    clear(*m_packs);
    for (const auto& pack : m_firing->record.packs) {
        auto* card = new QWidget;
        auto* column = new QVBoxLayout(card);
        column->addWidget(new Heading(m_theme, TextSize::body, QString::fromStdString(pack.place)));
        auto* view = new PackView(m_theme);
        view->setPack(drawnPack(pack, m_firing->record.looks));
        column->addWidget(view, 1);
        m_packs->addWidget(card, 1);
    }
    m_cold->show(m_firing);
    m_tabs->setTabEnabled(1, !m_firing->record.packs.empty());
}

void FiringView::showWare() {
    const auto& record = m_firing->record;
    m_ware->show(record.firing.id, record.pieces, record.outcomes, record.kiln.fuel != Fuel::electric);
    m_tabs->setTabEnabled(2, !record.pieces.empty());
}

} // namespace ringhold
