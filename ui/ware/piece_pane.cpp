#include "ui/ware/piece_pane.h"

#include "ui/common/column_scroll.h"
#include "ui/session/notebook.h"
#include "ui/ware/finds_pane.h"
#include "ui/ware/photo_bar.h"
#include "ui/ware/ware_firings.h"

#include <QHBoxLayout>

#include <cmath>

namespace ringhold {

namespace {

constexpr int height_px = 118; ///< of a sag or two; further ones are scrolled to

} // namespace

PiecePane::PiecePane(Notebook& notebook, WareModel& model, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_model(model), m_evidence(notebook.book()),
      m_finds(new PieceFinds(notebook, model.undoStack(), this)),
      m_photos(new PhotoBar(notebook, model.undoStack(), theme)),
      m_pane(new FindsPane(notebook.preferences(), *m_finds)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(18);
    auto* looked = new ColumnScroll(m_pane);
    looked->setFixedHeight(height_px);
    row->addWidget(looked, 3);
    row->addWidget(m_photos, 2, Qt::AlignTop);
    connectAll();
}

void PiecePane::connectAll() {
    connect(m_photos, &PhotoBar::written, this, [this] {
        countPhotos();
        Q_EMIT written();
    });
    connect(m_photos, &PhotoBar::troubled, this, &PiecePane::troubled);
    connect(m_photos, &PhotoBar::measured, this, &PiecePane::measured);
    connect(m_finds, &PieceFinds::written, this, &PiecePane::written);
    connect(m_finds, &PieceFinds::troubled, this, &PiecePane::troubled);
    connect(m_pane, &FindsPane::troubled, this, &PiecePane::troubled);
    connect(&m_model.undoStack(), &QUndoStack::indexChanged, this, &PiecePane::countPhotos);
}

const Piece* PiecePane::piece() const {
    return m_row >= 0 && !m_model.isNewRow(m_row) ? &m_model.piece(m_row) : nullptr;
}

void PiecePane::show(int row) {
    m_row = row;
    const Piece* shown = piece();
    const QString name = shown ? QString::fromStdString(shown->name) : QString();
    const auto id = shown ? std::optional(shown->id) : std::nullopt;
    m_photos->show(id, name);
    m_finds->show(id, name);
    if (isVisible())
        showMarks();
}

void PiecePane::reload() {
    m_evidence.forget();
    m_photos->model().reload();
    m_finds->reload();
    if (isVisible())
        showMarks();
}

void PiecePane::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    showMarks();
}

/// Reads whole firings: only when it is looked at.
void PiecePane::showMarks() {
    const Piece* shown = piece();
    const auto marks = shown ? m_evidence.marks(shown->firing) : Result<GrowthMarks>(GrowthMarks());
    const std::string glaze = shown ? soleGlaze(*shown) : std::string();
    const auto known = glaze.empty() ? Result<GlazeKnowledge>(GlazeKnowledge()) : m_evidence.of(glaze);
    if (!marks || !known) {
        Q_EMIT troubled(tr("The book cannot be read just now."));
        return;
    }
    m_pane->show(*marks, known->growth.rate());
}

void PiecePane::countPhotos() {
    std::vector<Piece> pieces;
    for (int row = 0; row < m_model.pieceCount(); ++row)
        pieces.push_back(m_model.piece(row));
    m_model.showPhotoCounts(photoCounts(m_notebook, pieces));
}

/// A ring is measured across as a crystal is: its radius is half of that.
void PiecePane::measured(const PhotoLength& across, std::optional<int> ring) {
    if (!piece())
        return;
    if (ring) {
        m_finds->setRing(*ring, across.size_mm / 2, across.sd_mm / 2);
        return;
    }
    WareRow changed = m_model.row(m_row);
    if (changed.outcome.largest_mm.value_or(0) >= across.size_mm)
        return;
    changed.outcome.largest_mm = std::round(across.size_mm * 10) / 10;
    m_model.alter(changed, headingOf(WareColumn::largest));
}

} // namespace ringhold
