// What the ware page takes out of the book.
#pragma once

#include "core/book/reader.h"
#include "core/learn/firing_cost.h"

#include <QStringList>

#include <map>
#include <vector>

class QComboBox;

namespace ringhold {

class Notebook;

struct FiringWare {
    std::vector<Piece> pieces;
    std::vector<Outcome> outcomes;
    std::vector<Pack> packs;
    std::map<PieceId, int> photoCounts;
    QStringList glazeNames; ///< of the cards in the book
    QStringList zincFree;   ///< of these, those known to have no zinc in them
    bool flame = false;     ///< fired by gas or wood
    bool ended = false;
    FiringUse use{}; ///< of a firing that has ended, what it took at the kiln's prices
};

Result<FiringWare> wareOf(Notebook& notebook, FiringId firing);

/// How many photos each piece has; those without are not named.
std::map<PieceId, int> photoCounts(Notebook& notebook, const std::vector<Piece>& pieces);

/// All firings, live ones first, then the latest; the one that was chosen stays so. Tells nobody.
Status listFiringsIn(QComboBox& box, Notebook& notebook);

} // namespace ringhold
