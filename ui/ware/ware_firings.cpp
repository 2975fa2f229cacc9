#include "ui/ware/ware_firings.h"

#include "core/book/drawn_firing.h"
#include "core/book/glaze_cards.h"
#include "core/book/ware_finds.h"
#include "core/glaze/zinc.h"
#include "ui/common/firing_words.h"
#include "ui/session/notebook.h"

#include <QComboBox>
#include <QSignalBlocker>

#include <algorithm>

namespace ringhold {

namespace {

void sortForChoice(std::vector<FiringSummary>& firings) {
    std::ranges::sort(firings, [](const FiringSummary& a, const FiringSummary& b) {
        return a.ended.has_value() != b.ended.has_value() ? !a.ended : a.began > b.began;
    });
}

bool firedByFlame(const std::vector<Kiln>& kilns, KilnId id) {
    const auto kiln = std::ranges::find(kilns, id, &Kiln::id);
    return kiln != kilns.end() && kiln->fuel != Fuel::electric;
}

} // namespace

Result<FiringWare> wareOf(Notebook& notebook, FiringId id) {
    const auto reader = notebook.reader();
    const auto firing = reader.firing(id);
    const auto kilns = reader.kilns();
    auto pieces = reader.pieces(id);
    auto outcomes = reader.outcomes(id);
    auto packs = reader.packs(id);
    const auto cards = GlazeCards(notebook.book()).all();
    if (!firing || !kilns || !pieces || !outcomes || !packs || !cards)
        return Error{ErrorKind::unreadable, "the book cannot be read just now"};
    FiringWare ware{std::move(*pieces),
                    std::move(*outcomes),
                    std::move(*packs),
                    {},
                    {},
                    {},
                    firedByFlame(*kilns, firing->kiln),
                    firing->ended.has_value(),
                    {}};
    for (const auto& card : *cards) {
        ware.glazeNames << QString::fromStdString(card.name);
        if (!holdsZinc(card).value_or(true))
            ware.zincFree << ware.glazeNames.last();
    }
    ware.photoCounts = photoCounts(notebook, ware.pieces);
    if (ware.ended)
        if (const auto drawn = drawnFiring(notebook.book(), id, {.others = false}))
            ware.use = useOf(drawn->record);
    return ware;
}

std::map<PieceId, int> photoCounts(Notebook& notebook, const std::vector<Piece>& pieces) {
    std::map<PieceId, int> counts;
    const WareFinds finds(notebook.book());
    for (const auto& piece : pieces)
        if (const auto photos = finds.photos(piece.id); photos && !photos->empty())
            counts[piece.id] = static_cast<int>(photos->size());
    return counts;
}

Status listFiringsIn(QComboBox& box, Notebook& notebook) {
    auto firings = notebook.reader().firings();
    if (!firings)
        return firings.error();
    sortForChoice(*firings);
    const QVariant before = box.currentData();
    const QSignalBlocker quiet(&box);
    box.clear();
    for (const auto& firing : *firings)
        box.addItem(firingWords(firing, notebook.preferences()), static_cast<qint64>(firing.id));
    box.setCurrentIndex(firings->empty() ? -1 : std::max(0, box.findData(before)));
    box.setEnabled(!firings->empty());
    return {};
}

} // namespace ringhold
