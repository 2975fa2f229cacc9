#include "ui/glaze/glaze_page.h"

#include "ui/common/cell_delegate.h"
#include "ui/common/column_scroll.h"
#include "ui/common/fitted_table.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/undo_buttons.h"
#include "ui/common/words_on_page.h"
#include "ui/glaze/card_form.h"
#include "ui/glaze/cards_model.h"
#include "ui/glaze/glaze_use.h"
#include "ui/glaze/growth_pane.h"
#include "ui/glaze/lessons_pane.h"
#include "ui/glaze/recipe_pane.h"
#include "ui/session/notebook.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QListView>
#include <QPushButton>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

QString freeName(const CardsModel& cards) {
    const QString plain = GlazePage::tr("new glaze");
    QString name = plain;
    for (int i = 2; cards.rowOf(name); ++i)
        name = QStringLiteral("%1 %2").arg(plain).arg(i);
    return name;
}

} // namespace

GlazePage::GlazePage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_cards(new CardsModel(notebook, this)),
      m_list(new QListView), m_new(new QPushButton(tr("&New glaze"))),
      m_fromFirings(new QPushButton(tr("Cards for glazes &fired"))),
      m_takeAway(new QPushButton(tr("Ta&ke away"))), m_title(new Heading(theme, TextSize::title)),
      m_tabs(new QTabWidget), m_form(new CardForm(notebook.preferences())), m_recipe(new RecipePane),
      m_use(new GlazeUseModel(notebook.preferences(), this)), m_useTable(new FittedTable),
      m_useWords(softLabel()), m_lessons(new LessonsPane(notebook.preferences(), theme)),
      m_growth(new GrowthPane(notebook.preferences(), theme)), m_trouble(new Remark(Remark::Kind::warning)),
      m_evidence(notebook.book()) {
    auto* book = new QSplitter(Qt::Horizontal);
    book->addWidget(makeList(theme));
    book->addWidget(makeCard(theme));
    book->setChildrenCollapsible(false);
    book->setStretchFactor(0, 1);
    book->setStretchFactor(1, 3);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->addWidget(book);
    connectAll();
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { refresh(); });
}

GlazePage::~GlazePage() {
    m_cards->undoStack().disconnect(this); // it tells that it is empty when it goes
}

QWidget* GlazePage::makeList(const Theme& theme) {
    QVBoxLayout* column = nullptr;
    auto* left = sheet(column);
    column->addWidget(new Heading(theme, TextSize::title, tr("Glazes")));
    m_list->setModel(m_cards);
    m_list->setItemDelegate(new CellDelegate(m_list));
    m_list->setAccessibleName(tr("Glaze cards"));
    column->addWidget(m_list, 1);
    m_fromFirings->setToolTip(tr("A card for every glaze that a piece names and that has none yet"));
    for (auto* button : {m_new, m_fromFirings, m_takeAway}) {
        button->setAutoDefault(false);
        column->addWidget(button);
    }
    return left;
}

QWidget* GlazePage::makeCard(const Theme&) {
    QVBoxLayout* column = nullptr;
    auto* right = sheet(column);
    auto* head = new QHBoxLayout;
    head->addWidget(m_title, 1);
    head->addWidget(new UndoButtons(m_cards->undoStack(), *this));
    column->addLayout(head);
    m_tabs->setAccessibleName(tr("What is shown of the glaze"));
    m_tabs->addTab(new ColumnScroll(m_form), tr("Card"));
    m_tabs->addTab(m_recipe, tr("Recipe"));
    auto* use = new QWidget;
    auto* useColumn = new QVBoxLayout(use);
    useColumn->setContentsMargins(0, 6, 0, 0);
    m_useTable->setModel(m_use);
    m_useTable->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_useTable->setAccessibleName(tr("Firings that the glaze was in"));
    m_useTable->setColumns({{12.5, 0}, {10, 2}, {7, 1}, {10, 0}, {7, 0}, {8.5, 0}, {7.5, 1}});
    useColumn->addWidget(m_useWords);
    useColumn->addWidget(m_useTable, 1);
    m_tabs->addTab(use, tr("Firings"));
    m_tabs->addTab(m_lessons, tr("What firings teach"));
    m_tabs->addTab(m_growth, tr("Growth"));
    column->addWidget(m_tabs, 1);
    column->addWidget(m_trouble);
    return right;
}

void GlazePage::connectAll() {
    connect(m_new, &QPushButton::clicked, this, &GlazePage::addNew);
    connect(m_fromFirings, &QPushButton::clicked, this, &GlazePage::addNamedInFirings);
    connect(m_takeAway, &QPushButton::clicked, this, &GlazePage::takeAway);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, &GlazePage::showCurrent);
    connect(m_cards, &QAbstractItemModel::modelAboutToBeReset, this, [this] { m_before = current(); });
    connect(m_cards, &QAbstractItemModel::modelReset, this, [this] { goTo(m_before); });
    connect(m_cards, &CardsModel::troubled, m_trouble, &Remark::say);
    connect(m_cards, &CardsModel::written, this, [this] {
        m_trouble->say({});
        m_fresh->tellOthers();
    });
    connect(&m_cards->undoStack(), &QUndoStack::indexChanged, this, &GlazePage::showCurrent);
    connect(m_form, &CardForm::edited, this, [this](const GlazeCard& card, const QString& what) {
        m_cards->alter(card, what);
        goTo(card.id);
    });
    connect(m_recipe, &RecipePane::edited, this, [this](const std::vector<RecipeLine>& lines) {
        const auto row = current() ? m_cards->rowOf(*current()) : std::nullopt;
        if (!row)
            return;
        GlazeCard card = m_cards->card(*row);
        card.recipe = lines;
        m_cards->alter(card, tr("recipe"));
        goTo(card.id);
    });
    connect(m_tabs, &QTabWidget::currentChanged, this, &GlazePage::learn);
    connect(m_useTable, &QAbstractItemView::activated, this, [this](const QModelIndex& at) {
        Q_EMIT firingWanted(static_cast<qlonglong>(m_use->firing(at.row()).firing.id));
    });
}

std::optional<GlazeCardId> GlazePage::current() const {
    const int row = m_list->currentIndex().row();
    return row < 0 || row >= m_cards->rowCount() ? std::nullopt : std::optional(m_cards->card(row).id);
}

void GlazePage::goTo(std::optional<GlazeCardId> card) {
    const auto row = card ? m_cards->rowOf(*card) : std::nullopt;
    if (m_cards->rowCount() > 0)
        m_list->setCurrentIndex(m_cards->index(row.value_or(0)));
    showCurrent();
}

void GlazePage::open(const QString& glaze) {
    m_cards->reload();
    if (const auto row = m_cards->rowOf(glaze))
        m_list->setCurrentIndex(m_cards->index(*row));
}

void GlazePage::refresh() {
    m_results.forget();
    m_evidence.forget();
    m_cards->reload();
    goTo(current());
}

void GlazePage::showCurrent() {
    const auto id = current();
    const auto row = id ? m_cards->rowOf(*id) : std::nullopt;
    m_tabs->setEnabled(row.has_value());
    m_takeAway->setEnabled(row.has_value());
    if (!row) {
        m_title->say(tr("No glaze yet"));
        m_form->show({});
        m_recipe->show({});
        m_use->show({});
        return;
    }
    const GlazeCard card = m_cards->card(*row);
    m_title->say(QString::fromStdString(card.name));
    m_form->show(card);
    m_recipe->show(card.recipe);
    auto firings = glazeFirings(m_notebook.reader(), card.name);
    if (!firings)
        return m_trouble->say(QString::fromStdString(firings.error().text()));
    m_useWords->setText(firings->empty() ? tr("No piece in the book names this glaze yet.")
                                         : tr("Enter opens a firing."));
    m_use->show(std::move(*firings));
    learn();
}

/// Reads whole firings: only when it is looked at.
void GlazePage::learn() {
    const auto row = current() ? m_cards->rowOf(*current()) : std::nullopt;
    if (row && m_tabs->currentWidget() == m_growth)
        return showGrowth(m_cards->card(*row));
    if (!row || m_tabs->currentWidget() != m_lessons)
        return;
    std::vector<GlazeFiring> firings;
    for (int i = 0; i < m_use->rowCount(); ++i)
        firings.push_back(m_use->firing(i));
    auto pieces = m_results.of(m_notebook.book(), firings);
    if (!pieces)
        return m_trouble->say(QString::fromStdString(pieces.error().text()));
    m_lessons->show(m_cards->card(*row), std::move(*pieces));
}

void GlazePage::showGrowth(const GlazeCard& card) {
    const auto known = m_evidence.of(card.name);
    if (!known)
        return m_trouble->say(QString::fromStdString(known.error().text()));
    m_growth->show(*known);
}

void GlazePage::addNew() {
    GlazeCard card;
    card.name = freeName(*m_cards).toStdString();
    const auto id = m_cards->add(card);
    if (!id)
        return;
    goTo(id);
    m_tabs->setCurrentIndex(0);
    m_form->startWriting();
}

void GlazePage::addNamedInFirings() {
    const auto firings = m_notebook.reader().firings();
    if (!firings)
        return m_trouble->say(QString::fromStdString(firings.error().text()));
    int added = 0;
    for (const auto& firing : *firings)
        if (const auto pieces = m_notebook.reader().pieces(firing.id))
            for (const auto& piece : *pieces)
                for (const auto& name : glazeNames(piece.glaze)) {
                    GlazeCard card;
                    card.name = name;
                    if (!m_cards->rowOf(QString::fromStdString(name)) && m_cards->add(card))
                        ++added;
                }
    goTo(current());
    if (added == 0)
        m_trouble->say(tr("Every glaze that a piece names has its card."));
}

void GlazePage::takeAway() {
    if (const auto id = current(); id && m_cards->remove(*id))
        goTo({});
}

} // namespace ringhold
