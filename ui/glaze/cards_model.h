// The glaze cards of the book, as a list that can be changed and changed back.
#pragma once

#include "core/base/result.h" // before the card: see DEVELOPERS.md on moc and <compare>
#include "core/glaze/glaze_card.h"

#include <QAbstractListModel>
#include <QUndoStack>

#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

/// By name. What returns true is in the book; else nothing changed and troubled() said why. The notebook
/// outlives it.
class CardsModel : public QAbstractListModel {
    Q_OBJECT

  public:
    explicit CardsModel(Notebook& notebook, QObject* parent = nullptr)
        : QAbstractListModel(parent), m_notebook(notebook) {}

    /// Takes them from the book; views are told nothing when they show it so already.
    void reload();
    const GlazeCard& card(int row) const { return m_cards[static_cast<std::size_t>(row)]; }
    std::optional<int> rowOf(GlazeCardId id) const;
    std::optional<int> rowOf(const QString& name) const;
    QUndoStack& undoStack() { return m_undo; }

    std::optional<GlazeCardId> add(const GlazeCard& card);
    bool alter(const GlazeCard& card, const QString& what);
    bool remove(GlazeCardId id);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  Q_SIGNALS:
    void written();
    void troubled(const QString& why);

  private:
    friend class CardChange;
    bool refuse(const Error& error);
    /// Brings the book from one to the other; nothing stands for no card. Ids are those that a card had
    /// first.
    bool apply(const std::optional<GlazeCard>& from, std::optional<GlazeCard>& to);
    bool push(QUndoCommand* command);

    Notebook& m_notebook;
    std::vector<GlazeCard> m_cards;
    QUndoStack m_undo;
    bool m_refused = false;
};

} // namespace ringhold
