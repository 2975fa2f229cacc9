// Changes of the ware that can be undone.
#pragma once

#include "ui/ware/ware_model.h"

#include <QUndoCommand>

namespace ringhold {

/// One piece as it was and as it is to be. Dropped when the book refuses it.
class WareEdit : public QUndoCommand {
  public:
    WareEdit(WareModel& model, WareRow before, WareRow after, const QString& what)
        : QUndoCommand(what), m_model(model), m_before(std::move(before)), m_after(std::move(after)) {}
    void redo() override { setObsolete(!m_model.write(m_after)); }
    void undo() override { setObsolete(!m_model.write(m_before)); }

  private:
    WareModel& m_model;
    WareRow m_before;
    WareRow m_after;
};

/// Pieces that come into the load or go out of it.
class WareCount : public QUndoCommand {
  public:
    enum class Way { in, out };
    WareCount(WareModel& model, std::vector<WholePiece> pieces, Way way, const QString& what)
        : QUndoCommand(what), m_model(model), m_pieces(std::move(pieces)), m_way(way) {}
    void redo() override { go(m_way == Way::in); }
    void undo() override { go(m_way == Way::out); }

  private:
    void go(bool in) { setObsolete(!(in ? m_model.insert(m_pieces) : m_model.erase(m_pieces))); }

    WareModel& m_model;
    std::vector<WholePiece> m_pieces;
    Way m_way;
};

} // namespace ringhold
