#include "ui/glaze/cards_model.h"

#include "core/book/glaze_cards.h"
#include "ui/session/notebook.h"

#include <QUndoCommand>

#include <algorithm>

namespace ringhold {

/// A card as it was and as it is to be. Dropped when the book refuses it.
class CardChange : public QUndoCommand {
  public:
    CardChange(CardsModel& model, std::optional<GlazeCard> before, std::optional<GlazeCard> after,
               const QString& what)
        : QUndoCommand(what), m_model(model), m_before(std::move(before)), m_after(std::move(after)) {}
    void redo() override { setObsolete(!m_model.apply(m_before, m_after)); }
    void undo() override { setObsolete(!m_model.apply(m_after, m_before)); }

  private:
    CardsModel& m_model;
    std::optional<GlazeCard> m_before;
    std::optional<GlazeCard> m_after;
};

namespace {

QString nameOf(const GlazeCard& card) {
    return QString::fromStdString(card.name);
}

} // namespace

void CardsModel::reload() {
    auto cards = GlazeCards(m_notebook.book()).all();
    if (!cards) {
        refuse(cards.error());
        return;
    }
    if (*cards == m_cards)
        return;
    if (std::ranges::equal(*cards, m_cards, {}, &GlazeCard::id, &GlazeCard::id)) {
        m_cards = std::move(*cards); // the same cards in the same order: whoever stands on one stays there
        Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    m_cards = std::move(*cards);
    endResetModel();
}

std::optional<int> CardsModel::rowOf(GlazeCardId id) const {
    const auto found = std::ranges::find(m_cards, id, &GlazeCard::id);
    return found == m_cards.end() ? std::nullopt : std::optional(int(found - m_cards.begin()));
}

std::optional<int> CardsModel::rowOf(const QString& name) const {
    const auto found = std::ranges::find_if(m_cards, [&](const GlazeCard& card) {
        return nameOf(card).compare(name.trimmed(), Qt::CaseInsensitive) == 0;
    });
    return found == m_cards.end() ? std::nullopt : std::optional(int(found - m_cards.begin()));
}

bool CardsModel::refuse(const Error& error) {
    m_refused = true;
    Q_EMIT troubled(QString::fromStdString(error.text()));
    return false;
}

bool CardsModel::push(QUndoCommand* command) {
    m_refused = false;
    m_undo.push(command);
    return !m_refused;
}

std::optional<GlazeCardId> CardsModel::add(const GlazeCard& card) {
    GlazeCard fresh = card;
    fresh.id = {};
    if (!push(new CardChange(*this, std::nullopt, fresh, tr("new glaze %1").arg(nameOf(card)))))
        return std::nullopt;
    const auto row = rowOf(nameOf(card));
    return row ? std::optional(this->card(*row).id) : std::nullopt;
}

bool CardsModel::alter(const GlazeCard& changed, const QString& what) {
    const auto row = rowOf(changed.id);
    if (!row)
        return false;
    if (card(*row) == changed)
        return true;
    return push(new CardChange(*this, card(*row), changed, tr("%1 of %2").arg(what, nameOf(changed))));
}

bool CardsModel::remove(GlazeCardId id) {
    const auto row = rowOf(id);
    return row && push(new CardChange(*this, card(*row), std::nullopt,
                                      tr("glaze %1 taken away").arg(nameOf(card(*row)))));
}

bool CardsModel::apply(const std::optional<GlazeCard>& from, std::optional<GlazeCard>& to) {
    GlazeCards cards(m_notebook.book());
    Status done;
    if (!to)
        done = cards.remove(from->id);
    else if (from)
        done = cards.alter(*to);
    else if (to->id != GlazeCardId{})
        done = cards.restore(*to);
    else if (const auto id = cards.add(*to))
        to->id = *id;
    else
        done = id.error();
    if (!done)
        return refuse(done.error());
    reload();
    Q_EMIT written();
    return true;
}

int CardsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_cards.size());
}

QVariant CardsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto& shown = card(index.row());
    if (role == Qt::DisplayRole && !shown.cone.empty())
        return tr("%1 · cone %2").arg(nameOf(shown), QString::fromStdString(shown.cone));
    if (role == Qt::DisplayRole || role == Qt::EditRole)
        return nameOf(shown);
    return {};
}

} // namespace ringhold
