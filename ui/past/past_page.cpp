#include "ui/past/past_page.h"

#include "ui/common/fitted_table.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/words_on_page.h"
#include "ui/exchange/export_row.h"
#include "ui/past/filter_fields.h"
#include "ui/past/firing_view.h"
#include "ui/past/firings_model.h"
#include "ui/past/found_firings.h"
#include "ui/past/laid_over_view.h"
#include "ui/report/report_view.h"
#include "ui/session/notebook.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int openAfter_ms = 80;

} // namespace

PastPage::PastPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme),
      m_firings(new FiringsModel(notebook.preferences(), this)), m_found(new FoundFirings(*m_firings, this)),
      m_filter(new QLineEdit), m_fields(new FilterFields(notebook.preferences())), m_counts(softLabel()),
      m_table(new FittedTable), m_untick(new QPushButton(tr("&Untick all"))), m_views(new QTabBar),
      m_stack(new QStackedWidget), m_firing(new FiringView(notebook, theme)),
      m_report(new ReportView(notebook)), m_laid(new LaidOverView(notebook.preferences(), theme)),
      m_export(new ExportRow(notebook)), m_trouble(new Remark(Remark::Kind::warning)) {
    auto* book = new QSplitter(Qt::Horizontal);
    book->addWidget(makeList(theme));
    book->addWidget(makeReading());
    book->setChildrenCollapsible(false);
    book->setStretchFactor(0, 2);
    book->setStretchFactor(1, 3);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->addWidget(book);
    m_openSoon.setSingleShot(true);
    m_openSoon.setInterval(openAfter_ms);
    connectAll();
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { refresh(); });
}

QWidget* PastPage::makeList(const Theme& theme) {
    QVBoxLayout* column = nullptr;
    auto* left = sheet(column);
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::title, tr("Past firings")), 1);
    head->addWidget(m_counts);
    column->addLayout(head);
    m_filter->setPlaceholderText(tr("Find by any words: title, notes, ware, date"));
    m_filter->setAccessibleName(tr("Find firings by any words"));
    m_filter->setClearButtonEnabled(true);
    column->addWidget(m_filter);
    column->addWidget(m_fields);
    m_table->setModel(m_found);
    m_table->setAccessibleName(tr("Firings"));
    m_table->setColumns({{3.2, 0}, {9.5, 0}, {7.5, 2}, {6.5, 1}, {7.5, 0}, {9.8, 0}, {9.2, 0}});
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setShowGrid(false);
    m_table->horizontalHeader()->setSortIndicator(static_cast<int>(FiringColumn::began), Qt::DescendingOrder);
    m_table->setSortingEnabled(true);
    m_table->installEventFilter(this);
    column->addWidget(m_table, 1);
    auto* foot = new QHBoxLayout;
    foot->addWidget(softLabel(tr("Tick two or more, with Space, to lay them over each other.")), 1);
    m_untick->setAutoDefault(false);
    foot->addWidget(m_untick);
    column->addLayout(foot);
    return left;
}

QWidget* PastPage::makeReading() {
    QVBoxLayout* column = nullptr;
    auto* right = sheet(column);
    m_views->addTab(tr("&Opened"));
    m_views->addTab(tr("Repor&t"));
    m_views->addTab({});
    m_views->setAccessibleName(tr("What is shown of the firings"));
    m_views->setExpanding(false);
    m_views->setDrawBase(false);
    column->addWidget(m_views);
    column->addWidget(m_trouble);
    m_stack->addWidget(m_firing);
    m_stack->addWidget(m_report);
    m_stack->addWidget(m_laid);
    column->addWidget(m_stack, 1);
    column->addWidget(m_export);
    return right;
}

void PastPage::connectAll() {
    connect(m_filter, &QLineEdit::textChanged, this, &PastPage::find);
    connect(m_fields, &FilterFields::changed, this, &PastPage::find);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { m_openSoon.start(); });
    connect(&m_openSoon, &QTimer::timeout, this, &PastPage::openCurrent);
    connect(m_table, &QTableView::doubleClicked, this, [this] { show(oneFiring); });
    connect(m_firings, &FiringsModel::tickedChanged, this, &PastPage::ticksChanged);
    connect(m_untick, &QPushButton::clicked, m_firings, &FiringsModel::untickAll);
    connect(m_views, &QTabBar::currentChanged, this, [this](int view) { show(static_cast<View>(view)); });
    connect(m_firing, &FiringView::troubled, m_trouble, &Remark::say);
    connect(m_firing, &FiringView::coldPackWritten, this, [this] {
        refresh();
        m_fresh->tellOthers();
    });
}

void PastPage::refresh() {
    auto firings = m_notebook.reader().firings();
    if (!firings)
        return m_trouble->say(QString::fromStdString(firings.error().text()));
    const auto before = current();
    m_opened.forget();
    m_table->setFont(m_theme.text(TextSize::small));
    m_firings->show(std::move(*firings));
    if (const auto kilns = m_notebook.reader().kilns())
        m_fields->showKilns(*kilns);
    find();
    const int row = before ? m_firings->rowOf(*before) : -1;
    if (row >= 0)
        m_table->setCurrentIndex(m_found->mapFromSource(m_firings->index(row, 1)));
    else if (m_found->rowCount() > 0)
        m_table->setCurrentIndex(m_found->index(0, 1));
    ticksChanged();
    openCurrent();
}

void PastPage::find() {
    FiringFilter filter = m_fields->filter();
    filter.words = m_filter->text().trimmed().toStdString();
    const auto found = m_found->find(m_notebook.reader(), filter);
    m_trouble->say(found ? QString() : QString::fromStdString(found.error().text()));
    tellCounts();
}

std::optional<FiringId> PastPage::current() const {
    const auto at = m_found->mapToSource(m_table->currentIndex());
    return at.isValid() ? std::optional(m_firings->firing(at.row()).id) : std::nullopt;
}

void PastPage::open(FiringId firing) {
    if (m_firings->rowOf(firing) < 0)
        refresh();
    const int row = m_firings->rowOf(firing);
    if (row < 0)
        return;
    m_filter->clear();
    m_fields->clear();
    find();
    m_table->setCurrentIndex(m_found->mapFromSource(m_firings->index(row, 1)));
    openCurrent();
    show(oneFiring);
}

void PastPage::openReport(std::optional<FiringId> firing) {
    if (firing)
        open(*firing);
    show(report);
    m_report->setFocus();
}

void PastPage::typePaperLog() {
    m_firing->typePaperLog();
}

void PastPage::openCurrent() {
    m_openSoon.stop();
    const auto id = current();
    m_export->show(id);
    if (m_stack->currentIndex() == report)
        m_report->show(id);
    if (!id)
        return m_firing->show(nullptr);
    const auto opened = m_opened.get(m_notebook.reader(), *id);
    m_trouble->say(opened ? QString() : QString::fromStdString(opened.error().text()));
    m_firing->show(opened ? *opened : nullptr);
}

void PastPage::layTicked() {
    std::vector<std::shared_ptr<const OpenedFiring>> firings;
    QString trouble;
    for (const FiringId id : m_firings->ticked()) {
        const auto opened = m_opened.get(m_notebook.reader(), id);
        if (opened)
            firings.push_back(*opened);
        else
            trouble = QString::fromStdString(opened.error().text());
    }
    m_trouble->say(trouble);
    m_laid->show(std::move(firings));
}

void PastPage::ticksChanged() {
    const auto ticked = m_firings->ticked().size();
    const bool several = ticked > 1;
    m_views->setTabText(laidOver, several ? tr("&Laid over (%1)").arg(ticked) : tr("&Laid over"));
    m_views->setTabEnabled(laidOver, several);
    m_untick->setEnabled(ticked > 0);
    if (several || m_stack->currentIndex() == laidOver)
        show(several ? laidOver : oneFiring);
    tellCounts();
}

void PastPage::tellCounts() {
    const int all = m_firings->rowCount();
    const int found = m_found->rowCount();
    m_counts->setText(found == all ? QString::number(all) : tr("%1 of %2").arg(found).arg(all));
}

void PastPage::show(View view) {
    const QSignalBlocker quiet(m_views);
    m_views->setCurrentIndex(view);
    m_stack->setCurrentIndex(view);
    if (view == report)
        m_report->show(current());
    if (view == laidOver)
        layTicked();
}

bool PastPage::tickCurrent() {
    const auto at = m_found->mapToSource(m_table->currentIndex());
    if (!at.isValid())
        return false;
    const auto tick = m_firings->index(at.row(), static_cast<int>(FiringColumn::tick));
    const bool ticked = tick.data(Qt::CheckStateRole).toInt() == Qt::Checked;
    return m_firings->setData(tick, int(ticked ? Qt::Unchecked : Qt::Checked), Qt::CheckStateRole);
}

bool PastPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_table || event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const auto key = static_cast<const QKeyEvent*>(event)->key();
    if (key == Qt::Key_Space && tickCurrent())
        return true;
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        openCurrent();
        show(oneFiring);
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace ringhold
