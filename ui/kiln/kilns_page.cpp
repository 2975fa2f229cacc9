#include "ui/kiln/kilns_page.h"

#include "ui/common/cell_delegate.h"
#include "ui/common/column_scroll.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/words_on_page.h"
#include "ui/kiln/kiln_form.h"
#include "ui/kiln/kiln_list_model.h"
#include "ui/kiln/offset_plot.h"
#include "ui/kiln/probe_model.h"
#include "ui/kiln/probe_table.h"
#include "ui/kiln/series_model.h"
#include "ui/kiln/service_pane.h"
#include "ui/kiln/wear_pane.h"
#include "ui/session/notebook.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

KilnsPage::KilnsPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_kilns(new KilnListModel(this)),
      m_probes(new ProbeModel(notebook, this)), m_series(new SeriesModel(this)), m_list(new QListView),
      m_add(new QPushButton(tr("&Add a kiln"))), m_form(new KilnForm), m_probeTable(new ProbeTable),
      m_replace(new QPushButton(tr("&Replace"))), m_trouble(new Remark(Remark::Kind::warning)),
      m_seriesList(new QListView), m_start(new QLabel), m_plot(new OffsetPlot(notebook.preferences(), theme)),
      m_tabs(new QTabWidget), m_service(new ServicePane(notebook)),
      m_wear(new WearPane(notebook.preferences())), m_history(notebook.book()) {
    auto* page = new QHBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->setSpacing(12);
    page->addWidget(makeKilnSheet(theme), 1);
    page->addWidget(makeTold(theme), 2);
    connectAll();
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { refresh(); });
}

QWidget* KilnsPage::makeKilnSheet(const Theme& theme) {
    QVBoxLayout* column = nullptr;
    auto* left = sheet(column);
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::title, tr("Kilns")), 1);
    m_add->setAutoDefault(false);
    head->addWidget(m_add);
    column->addLayout(head);
    m_list->setModel(m_kilns);
    m_list->setAccessibleName(tr("Kilns"));
    m_list->setItemDelegate(new CellDelegate(m_list));
    m_list->setMaximumHeight(96);
    column->addWidget(m_list);
    column->addWidget(new ColumnScroll(m_form), 1); // on the smallest window with large text
    return left;
}

QLayout* KilnsPage::makeProbeHead(const Theme& theme) {
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::large, tr("Probes")));
    head->addWidget(
        softLabel(tr("A probe that is moved or exchanged is a new one: its offset starts afresh.")), 1);
    m_replace->setAutoDefault(false);
    m_replace->setToolTip(tr("Retires the probe of this line today and fits another"));
    head->addWidget(m_replace);
    return head;
}

QWidget* KilnsPage::makeTold(const Theme& theme) {
    QVBoxLayout* column = nullptr;
    auto* right = sheet(column);
    m_tabs->setAccessibleName(tr("What is shown of the kiln"));
    m_tabs->addTab(makeProbeSheet(theme), tr("Probes"));
    m_tabs->addTab(m_wear, tr("Wear, energy, evenness"));
    m_tabs->addTab(m_service, tr("Service"));
    column->addWidget(m_tabs, 1);
    column->addWidget(m_trouble);
    return right;
}

QWidget* KilnsPage::makeProbeSheet(const Theme& theme) {
    auto* right = new QWidget;
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(0, 6, 0, 0);
    column->addLayout(makeProbeHead(theme));
    m_probeTable->setModel(m_probes);
    m_probeTable->setAccessibleName(tr("Probes of this kiln"));
    m_probeTable->setMinimumHeight(110);
    column->addWidget(m_probeTable, 2);
    column->addWidget(new Heading(theme, TextSize::large, tr("What firings have told of them")));
    auto* row = new QHBoxLayout;
    row->setSpacing(14);
    m_seriesList->setModel(m_series);
    m_seriesList->setAccessibleName(tr("Offsets by probe and place of the cones"));
    m_seriesList->setItemDelegate(new CellDelegate(m_seriesList));
    m_seriesList->setWordWrap(true);
    m_seriesList->setResizeMode(QListView::Adjust);
    m_seriesList->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    row->addWidget(m_seriesList, 2);
    auto* told = new QVBoxLayout;
    m_start->setWordWrap(true);
    told->addWidget(m_start);
    told->addWidget(m_plot, 1);
    row->addLayout(told, 3);
    column->addLayout(row, 3);
    column->addWidget(
        softLabel(tr("The offset is what the probe reads above what the cones feel. Dots are firings with "
                     "their 90 % intervals, the band is what each began with, and the next will.")));
    return right;
}

void KilnsPage::connectAll() {
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& now) { pick(now.row()); });
    connect(m_add, &QPushButton::clicked, this, &KilnsPage::beginNew);
    connect(m_form, &KilnForm::written, this, &KilnsPage::write);
    connect(m_replace, &QPushButton::clicked, this, &KilnsPage::replaceProbe);
    connect(m_tabs, &QTabWidget::currentChanged, this, &KilnsPage::showWear);
    connect(m_wear, &WearPane::firingWanted, this, &KilnsPage::firingWanted);
    connect(m_service, &ServicePane::written, this, [this] { m_fresh->tellOthers(); });
    connect(m_probes, &ProbeModel::troubled, m_trouble, &Remark::say);
    connect(m_probes, &ProbeModel::written, this, &KilnsPage::wroteProbe);
    connect(m_probeTable->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &KilnsPage::tellButtons);
    connect(m_seriesList->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& now) { showSeries(now.row()); });
}

std::optional<KilnId> KilnsPage::current() const {
    const auto id = m_form->kiln().id;
    return id == KilnId{} ? std::nullopt : std::optional(id);
}

void KilnsPage::showKiln(KilnId kiln) {
    if (m_kilns->rowOf(kiln) < 0)
        refresh();
    m_list->setCurrentIndex(m_kilns->index(m_kilns->rowOf(kiln)));
}

void KilnsPage::refresh() {
    auto kilns = m_notebook.reader().kilns();
    if (!kilns)
        return m_trouble->say(QString::fromStdString(kilns.error().text()));
    const auto before = current();
    const bool none = kilns->empty();
    {
        const QSignalBlocker quiet(m_list->selectionModel());
        m_kilns->show(std::move(*kilns));
    }
    if (none)
        return beginNew();
    const int row = before ? std::max(0, m_kilns->rowOf(*before)) : 0;
    m_list->setCurrentIndex(m_kilns->index(row));
    pick(row);
}

void KilnsPage::pick(int row) {
    if (row < 0)
        return;
    m_form->show(m_kilns->kiln(row));
    m_trouble->say({});
    showProbes();
}

void KilnsPage::beginNew() {
    m_list->clearSelection();
    m_form->show(Kiln{});
    m_form->startWriting();
    m_trouble->say({});
    showProbes();
}

void KilnsPage::write(const Kiln& kiln) {
    auto writer = m_notebook.writer();
    Kiln kept = kiln;
    if (kiln.id == KilnId{}) {
        const auto id = writer.add(kiln);
        if (!id)
            return m_form->refuse(QString::fromStdString(id.error().what));
        kept.id = *id;
    } else if (const auto done = writer.alter(kiln); !done) {
        return m_form->refuse(QString::fromStdString(done.error().what));
    }
    m_form->show(kept);
    refresh();
    m_fresh->tellOthers();
}

void KilnsPage::showProbes() {
    const auto kiln = current();
    std::vector<Probe> probes;
    std::vector<FiledOffset> filed;
    if (kiln) {
        const auto reader = m_notebook.reader();
        auto found = reader.probes(*kiln);
        auto offsets = reader.filedOffsets(*kiln);
        if (!found || !offsets)
            return m_trouble->say(tr("The book cannot be read just now."));
        probes = std::move(*found);
        filed = std::move(*offsets);
    }
    std::set<ProbeId> told;
    for (const auto& offset : filed)
        told.insert(offset.probe);
    const int before = std::max(0, m_seriesList->currentIndex().row());
    m_series->show(offsetSeries(probes, filed), m_notebook.preferences());
    m_shownProbes = probes;
    m_service->show(kiln, probes);
    m_probes->show(kiln, std::move(probes), std::move(told));
    m_probeTable->setEnabled(kiln.has_value());
    m_seriesList->setEnabled(m_series->rowCount() > 0);
    m_seriesList->setCurrentIndex(m_series->index(std::min(before, m_series->rowCount() - 1)));
    showSeries(m_seriesList->currentIndex().row());
    tellButtons();
    showWear();
}

/// Reads whole firings: only when it is looked at.
void KilnsPage::showWear() {
    if (m_tabs->currentWidget() != m_wear)
        return;
    const auto firings =
        current() ? m_history.of(m_form->kiln()) : Result<std::vector<KilnFiring>>(std::vector<KilnFiring>());
    if (!firings)
        return m_trouble->say(QString::fromStdString(firings.error().text()));
    m_wear->show(*firings, m_shownProbes, m_service->model().elementsFitted());
}

void KilnsPage::tellButtons() {
    const auto at = m_probeTable->currentIndex();
    m_replace->setEnabled(at.isValid() && !m_probes->isNewRow(at.row()) &&
                          !m_probes->probe(at.row()).retired);
}

void KilnsPage::replaceProbe() {
    const int row = m_probeTable->currentIndex().row();
    if (row >= 0 && !m_probes->isNewRow(row))
        m_probes->replace(row);
}

void KilnsPage::wroteProbe() {
    m_trouble->say({});
    showProbes();
    m_fresh->tellOthers();
}

void KilnsPage::showSeries(int row) {
    const auto* series = row < 0 ? nullptr : &m_series->series(row);
    m_plot->show(series);
    m_start->setText(series ? startWords(*series, m_notebook.preferences()) : QString());
}

} // namespace ringhold
