#include "ui/ware/shelf_map_pane.h"

#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/ware/shelf_map_view.h"
#include "ui/ware/ware_model.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QUndoCommand>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

/// A pack as it stood and as it is to stand.
class PackMove : public QUndoCommand {
  public:
    PackMove(ShelfMapPane& pane, Pack before, Pack after, const QString& what)
        : QUndoCommand(what), m_pane(&pane), m_before(std::move(before)), m_after(std::move(after)) {}
    void redo() override { setObsolete(!m_pane || !m_pane->writePack(m_after)); }
    void undo() override { setObsolete(!m_pane || !m_pane->writePack(m_before)); }

  private:
    QPointer<ShelfMapPane> m_pane;
    Pack m_before;
    Pack m_after;
};

ShelfMapPane::ShelfMapPane(Notebook& notebook, WareModel& ware, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_ware(ware), m_map(new ShelfMapModel(this)),
      m_view(new ShelfMapView(*m_map, theme)), m_words(softLabel()), m_newShelf(new QLineEdit) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_view, 1);
    auto* row = new QHBoxLayout;
    row->addWidget(m_words, 1);
    m_newShelf->setPlaceholderText(tr("another shelf"));
    m_newShelf->setAccessibleName(tr("Name of another shelf"));
    m_newShelf->setMaximumWidth(180);
    auto* add = new QPushButton(tr("Add s&helf"));
    add->setAutoDefault(false);
    row->addWidget(m_newShelf);
    row->addWidget(add);
    column->addLayout(row);
    connect(add, &QPushButton::clicked, this, &ShelfMapPane::addShelf);
    connect(m_newShelf, &QLineEdit::returnPressed, this, &ShelfMapPane::addShelf);
    connect(m_view, &ShelfMapView::moved, this, &ShelfMapPane::moved);
    connect(m_view, &ShelfMapView::currentChanged, this, [this](int at) {
        m_words->setText(at < 0 ? tr("Add pieces on the load sheet first.")
                                : m_map->index(at).data().toString());
    });
    connect(&m_ware, &WareModel::modelReset, this, &ShelfMapPane::refresh);
    connect(&m_ware, &WareModel::dataChanged, this, &ShelfMapPane::refresh);
    connect(&m_ware, &WareModel::rowsInserted, this, &ShelfMapPane::refresh);
    connect(&m_ware, &WareModel::rowsRemoved, this, &ShelfMapPane::refresh);
}

void ShelfMapPane::show(std::vector<Pack> packs) {
    m_packs = std::move(packs);
    refresh();
}

void ShelfMapPane::refresh() {
    std::vector<Piece> pieces;
    for (int row = 0; row < m_ware.pieceCount(); ++row)
        pieces.push_back(m_ware.piece(row));
    m_map->show(pieces, m_packs, m_extraShelves);
}

void ShelfMapPane::addShelf() {
    const QString name = m_newShelf->text().trimmed();
    if (name.isEmpty())
        return;
    m_extraShelves << name;
    m_newShelf->clear();
    refresh();
    m_view->setFocus();
}

void ShelfMapPane::moved(const ShelfItem& item, const QString& shelf, MapSpot spot) {
    if (!item.isPack()) {
        m_ware.place(std::get<PieceId>(item.id), shelf.toStdString(), spot);
        return;
    }
    const auto pack = std::ranges::find(m_packs, std::get<PackId>(item.id), &Pack::id);
    if (pack == m_packs.end())
        return;
    Pack after = *pack;
    after.shelf = shelf.toStdString();
    after.spot = spot;
    m_ware.undoStack().push(new PackMove(*this, *pack, after, tr("place of %1").arg(item.name)));
}

bool ShelfMapPane::writePack(const Pack& pack) {
    const auto kept = std::ranges::find(m_packs, pack.id, &Pack::id);
    if (kept == m_packs.end())
        return false;
    if (const auto done = m_notebook.writer().alter(pack); !done) {
        Q_EMIT troubled(QString::fromStdString(done.error().text()));
        return false;
    }
    *kept = pack;
    refresh();
    Q_EMIT packsWritten();
    return true;
}

} // namespace ringhold
