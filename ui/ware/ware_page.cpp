#include "ui/ware/ware_page.h"

#include "ui/common/choice_row.h"
#include "ui/common/cost_words.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/undo_buttons.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/ware/checklist.h"
#include "ui/ware/last_load.h"
#include "ui/ware/photo_bar.h"
#include "ui/ware/piece_pane.h"
#include "ui/ware/shelf_map_pane.h"
#include "ui/ware/ware_firings.h"
#include "ui/ware/ware_table.h"

#include <QColorDialog>
#include <QComboBox>
#include <QFrame>
#include <QHBoxLayout>
#include <QListView>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

QString counted(int count, const QString& one, const QString& many) {
    return count == 1 ? one : many.arg(count);
}

} // namespace

WarePage::WarePage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme),
      m_model(new WareModel(notebook, WareModel::Access::write, this)), m_firings(new QComboBox),
      m_sheets(new ChoiceRow(
          tr("Sheet"),
          {{tr("Load"), {}}, {tr("Shelf map"), {}}, {tr("Before lighting"), {}}, {tr("What came out"), {}}})),
      m_copy(new QPushButton(tr("&Copy the last load"))), m_takeOut(new QPushButton(tr("&Take out"))),
      m_pick(new QPushButton(tr("&Pick a colour …"))), m_counts(softLabel()), m_hint(softLabel()),
      m_flame(new Remark(Remark::Kind::warning)), m_trouble(new Remark(Remark::Kind::warning)),
      m_table(new WareTable(WareSheet::load)), m_piece(new PiecePane(notebook, *m_model, theme)),
      m_map(new ShelfMapPane(notebook, *m_model, theme)),
      m_checklist(new Checklist(notebook, m_model->undoStack())), m_stack(new QStackedWidget) {
    QVBoxLayout* column = nullptr;
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->addWidget(ringhold::sheet(column));
    column->addLayout(makeHead(theme));
    column->addLayout(makeSheets());
    column->addWidget(m_flame);
    m_stack->addWidget(makeTable());
    m_stack->addWidget(m_map);
    m_stack->addWidget(m_checklist);
    column->addWidget(m_stack, 1);
    column->addWidget(m_trouble);
    column->addLayout(makeFoot());
    m_chooseColour = [this](QColor colour, const QString& title) {
        return QColorDialog::getColor(colour, this, title);
    };
    connectAll();
    arrange();
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { refresh(); });
}

WarePage::~WarePage() {
    m_model->undoStack().disconnect(this); // it tells that it is empty when it goes
}

QLayout* WarePage::makeHead(const Theme& theme) {
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::title, tr("Ware")));
    m_firings->setAccessibleName(tr("Firing whose ware is shown"));
    m_firings->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    head->addWidget(m_firings, 1);
    m_counts->setWordWrap(false);
    head->addWidget(m_counts);
    return head;
}

QLayout* WarePage::makeSheets() {
    auto* row = new QHBoxLayout;
    m_sheets->setCurrent(0);
    row->addWidget(m_sheets);
    row->addStretch(1);
    row->addWidget(new UndoButtons(m_model->undoStack(), *this));
    return row;
}

QWidget* WarePage::makeTable() {
    auto* both = new QWidget;
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Pieces and what came out"));
    column->addWidget(m_table, 1);
    column->addWidget(m_piece);
    return both;
}

QLayout* WarePage::makeFoot() {
    auto* foot = new QHBoxLayout;
    foot->addWidget(m_hint, 1);
    m_copy->setToolTip(tr("The pieces of this kiln’s firing before, as they were set"));
    m_takeOut->setToolTip(tr("Takes the piece of this line out of the load"));
    m_pick->setToolTip(tr("For the crystals or the ground of the piece on this line (F4)"));
    for (auto* button : {m_pick, m_takeOut, m_copy}) {
        button->setAutoDefault(false);
        foot->addWidget(button);
    }
    return foot;
}

void WarePage::connectAll() {
    connect(m_firings, &QComboBox::currentIndexChanged, this, &WarePage::showChosen);
    connect(&m_notebook, &Notebook::sessionsChanged, this, &WarePage::showBegun);
    connect(m_sheets, &ChoiceRow::chosen, this, &WarePage::arrange);
    connect(m_copy, &QPushButton::clicked, this, &WarePage::copyLastLoad);
    connect(m_takeOut, &QPushButton::clicked, this,
            [this] { m_model->takeOut(m_table->currentIndex().row()); });
    connect(m_pick, &QPushButton::clicked, this, [this] { pickColour(m_table->currentIndex()); });
    connect(m_table, &WareTable::colourWanted, this, &WarePage::pickColour);
    connect(m_table, &WareTable::photosWanted, this, [this] { m_piece->photos().list().setFocus(); });
    connect(m_model, &WareModel::troubled, m_trouble, &Remark::say);
    connect(m_model, &WareModel::written, this, &WarePage::wrote);
    connect(m_map, &ShelfMapPane::troubled, m_trouble, &Remark::say);
    connect(m_map, &ShelfMapPane::packsWritten, this, &WarePage::wrote);
    connect(m_piece, &PiecePane::written, this, &WarePage::wrote);
    connect(m_piece, &PiecePane::troubled, m_trouble, &Remark::say);
    const auto moved = [this] {
        tellCounts();
        showPiece();
    };
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, moved);
}

std::optional<FiringId> WarePage::chosen() const {
    const QVariant id = m_firings->currentData();
    return id.isValid() ? std::optional(static_cast<FiringId>(id.toLongLong())) : std::nullopt;
}

void WarePage::showFiring(FiringId firing) {
    if (m_firings->findData(static_cast<qint64>(firing)) < 0)
        listFirings();
    m_firings->setCurrentIndex(m_firings->findData(static_cast<qint64>(firing)));
}

/// A firing that has just begun is the one whose load is set.
void WarePage::showBegun() {
    const auto& sessions = m_notebook.sessions();
    const auto begun = sessions.empty() ? std::nullopt : std::optional(sessions.back()->record().firing.id);
    if (begun && begun != m_begun)
        showFiring(*begun);
    m_begun = begun;
}

WarePage::Sheet WarePage::sheet() const {
    return static_cast<Sheet>(m_sheets->current().value_or(0));
}

void WarePage::showSheet(Sheet sheet) {
    m_sheets->setCurrent(static_cast<int>(sheet));
    arrange();
}

/// The sheet that is chosen, with what belongs to it.
void WarePage::arrange() {
    const bool outcome = sheet() == Sheet::outcome, load = sheet() == Sheet::load;
    const bool map = sheet() == Sheet::map;
    m_stack->setCurrentIndex(map ? 1 : sheet() == Sheet::checklist ? 2 : 0);
    if (load || outcome)
        m_table->showSheet(outcome ? WareSheet::outcome : WareSheet::load);
    m_piece->setVisible(outcome);
    m_pick->setVisible(outcome);
    m_copy->setVisible(load || map);
    m_takeOut->setVisible(load || outcome);
    m_hint->setText(
        outcome ? tr("Enter moves on, Delete empties. Crystals by digit: 0 none, 1 few, 2 many, 3 covered; "
                     "faults "
                     "parted by commas.")
        : map   ? tr("Seen from above. Arrows go from one to the next; Enter takes it up and sets it down, "
                       "arrows "
                       "and Page up or down move it; Escape puts it back.")
        : load  ? tr("A name in the last line adds a piece. Enter moves on, Space ticks, Delete empties.")
                : QString());
    tellCounts();
}

void WarePage::refresh() {
    listFirings();
    showChosen();
}

void WarePage::listFirings() {
    if (const auto listed = listFiringsIn(*m_firings, m_notebook); !listed)
        m_trouble->say(QString::fromStdString(listed.error().text()));
}

void WarePage::showChosen() {
    const auto id = chosen();
    const auto ware = id ? wareOf(m_notebook, *id) : Result<FiringWare>(FiringWare{});
    if (!ware)
        return m_trouble->say(tr("The book cannot be read just now."));
    const QModelIndex at = m_table->currentIndex();
    const auto [row, column] = std::pair(at.row(), at.column());
    m_model->showZincFree(ware->zincFree);
    m_model->show(id, ware->pieces, ware->outcomes, ware->flame);
    m_model->showPhotoCounts(ware->photoCounts);
    m_model->showGlazeNames(ware->glazeNames);
    m_map->show(ware->packs);
    m_use = ware->use;
    m_checklist->showFor(id.value_or(FiringId{}), ware->flame);
    if (id != m_shown) {
        m_shown = id;
        showSheet(ware->ended ? Sheet::outcome : Sheet::load);
    }
    if (id && !m_table->currentIndex().isValid())
        m_table->setCurrentIndex(
            m_model->index(std::clamp(row, 0, m_model->rowCount() - 1),
                           m_table->isColumnHidden(std::max(column, 0)) ? 0 : std::max(column, 0)));
    m_trouble->say({});
    tellCounts();
    showPiece();
    m_piece->reload();
}

void WarePage::showPiece() {
    m_piece->show(m_table->currentIndex().row());
}

void WarePage::tellCounts() {
    const int pieces = m_model->pieceCount();
    const bool some = chosen().has_value();
    QStringList counts{counted(pieces, tr("1 piece"), tr("%1 pieces")) +
                       tr(", %1 judged").arg(m_model->judgedCount())};
    counts << costWords(m_use, pieces);
    counts.removeAll(QString());
    m_counts->setText(some ? counts.join(QStringLiteral(" · "))
                           : tr("No firing yet: begin one on the Firing page."));
    tellFlame(m_model->openToFlame());
    const QModelIndex at = m_table->currentIndex();
    const bool piece = some && at.isValid() && !m_model->isNewRow(at.row());
    for (auto* widget : std::initializer_list<QWidget*>{m_copy, m_table, m_map, m_sheets})
        widget->setEnabled(some);
    m_takeOut->setEnabled(piece);
    m_pick->setEnabled(piece);
}

void WarePage::tellFlame(int open) {
    m_flame->say(
        open == 0
            ? QString()
            : counted(open, tr("1 piece stands"), tr("%1 pieces stand")) +
                  tr(" in the flame without a sagger: a reducing flame takes zinc out of the glaze, and "
                     "crystals need it."));
}

void WarePage::pickColour(const QModelIndex& cell) {
    if (!cell.isValid() || m_model->isNewRow(cell.row()))
        return;
    const auto column = static_cast<WareColumn>(cell.column()) == WareColumn::groundColour
                            ? WareColumn::groundColour
                            : WareColumn::crystalColour;
    const QModelIndex into = cell.siblingAtColumn(static_cast<int>(column));
    const QColor colour = m_chooseColour(into.data(Qt::DecorationRole).value<QColor>(), headingOf(column));
    if (colour.isValid())
        m_model->pick(into, colour.name());
}

void WarePage::wrote() {
    m_trouble->say({});
    tellCounts();
    m_fresh->tellOthers();
}

void WarePage::copyLastLoad() {
    const auto id = chosen();
    auto load = id ? lastLoad(m_notebook.reader(), *id) : std::optional<LastLoad>();
    if (!load)
        return m_trouble->say(QString::fromStdString(load.error().text()));
    if (!*load)
        return m_trouble->say(tr("No earlier firing of this kiln has its load in the book."));
    m_model->addPieces(std::move((*load)->pieces));
}

} // namespace ringhold
