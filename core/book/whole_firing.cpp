#include "core/book/whole_firing.h"

#include "core/book/channel_rows.h"
#include "core/book/record_text.h"
#include "core/book/rows.h"

#include <algorithm>
#include <stdexcept>

namespace ringhold {

namespace {

/// Without repeats, in the order of the pieces.
std::vector<std::string> glazesOf(const std::vector<Piece>& pieces) {
    std::vector<std::string> glazes;
    for (const auto& piece : pieces)
        for (auto& name : glazeNames(piece.glaze))
            if (std::ranges::count(glazes, name) == 0)
                glazes.push_back(std::move(name));
    return glazes;
}

std::vector<GlazeCard> cardsNamedBy(SQLite::Database& database, const std::vector<Piece>& pieces) {
    std::vector<GlazeCard> cards;
    for (const auto& name : glazesOf(pieces)) {
        auto card = rows::first(database, rows::glazeCard, "WHERE name = ?", name);
        if (!card || std::ranges::count(cards, card->id, &GlazeCard::id) > 0)
            continue;
        fillIn(database, *card);
        cards.push_back(std::move(*card));
    }
    return cards;
}

constexpr const char* ofPieces = "WHERE piece IN (SELECT id FROM piece WHERE firing = ?) ORDER BY ";

/// What stands in the kiln and what was found out about it.
void readWare(SQLite::Database& database, FiringRecord& whole, Pictures pictures) {
    const FiringId id = whole.firing.id;
    const std::string of = ofPieces;
    whole.pieces = rows::all(database, rows::piece, "WHERE firing = ? ORDER BY id", id);
    whole.outcomes = outcomesOf(database, id);
    const auto& photo = pictures == Pictures::with ? rows::photoWithPicture : rows::photo;
    whole.photos = rows::all(database, photo, (of + "id").c_str(), id);
    whole.photoMeasures = rows::all(database, rows::photoMeasure,
                                    "WHERE photo IN (SELECT photo.id FROM photo JOIN piece ON piece.id = "
                                    "piece WHERE firing = ?) ORDER BY id",
                                    id);
    whole.ringRadii = rows::all(database, rows::ringRadius, (of + "piece, ring").c_str(), id);
    whole.sagsSeen = rows::all(database, rows::sagSeen, (of + "piece, at_ms").c_str(), id);
    whole.glazeCards = cardsNamedBy(database, whole.pieces);
}

} // namespace

void fillIn(SQLite::Database& database, GlazeCard& card) {
    card.habits = rows::all(database, rows::habit, "WHERE card = ? ORDER BY position", card.id);
    card.recipe = rows::all(database, rows::recipeLine, "WHERE card = ? ORDER BY position", card.id);
}

std::vector<Pack> packsOf(SQLite::Database& database, FiringId firing) {
    auto packs = rows::all(database, rows::pack, "WHERE firing = ? ORDER BY id", firing);
    for (auto& pack : packs) {
        SQLite::Statement cones(database, "SELECT cone FROM pack_cone WHERE pack = ? ORDER BY position");
        sql::bindAll(cones, pack.id);
        while (cones.executeStep())
            pack.cones.push_back(cones.getColumn(0).getString());
    }
    return packs;
}

std::vector<Outcome> outcomesOf(SQLite::Database& database, FiringId firing) {
    const std::string of = ofPieces;
    auto outcomes = rows::all(database, rows::outcome, (of + "piece").c_str(), firing);
    SQLite::Statement faults(database, "SELECT piece, fault FROM outcome_fault " + of + "piece");
    sql::bindAll(faults, firing);
    while (faults.executeStep()) {
        const auto fault = fromBookText<WareFault>(faults.getColumn(1).getString());
        const auto outcome =
            std::ranges::find(outcomes, sql::idIn<PieceId>(faults.getColumn(0)), &Outcome::piece);
        if (fault && outcome != outcomes.end())
            outcome->knownFaults.insert(*fault);
    }
    return outcomes;
}

FiringRecord firingWithoutReadings(SQLite::Database& database, const Firing& firing, Pictures pictures) {
    const FiringId id = firing.id;
    FiringRecord whole;
    whole.firing = firing;
    whole.kiln = rows::all(database, rows::kiln, "WHERE id = ?", firing.kiln).at(0);
    whole.probes =
        rows::all(database, rows::probe,
                  "WHERE id IN (SELECT probe FROM channel WHERE firing = ?1 UNION SELECT probe FROM "
                  "filed_offset WHERE firing = ?1) ORDER BY id",
                  id);
    whole.channels = rows::all(database, rows::channel, "WHERE firing = ? ORDER BY id", id);
    whole.packs = packsOf(database, id);
    whole.looks = rows::all(database, rows::look,
                            "WHERE pack IN (SELECT id FROM pack WHERE firing = ?) ORDER BY at_ms, id", id);
    whole.settings = rows::all(database, rows::setting, "WHERE firing = ? ORDER BY at_ms, id", id);
    whole.notes = rows::all(database, rows::note, "WHERE firing = ? ORDER BY at_ms, id", id);
    readWare(database, whole, pictures);
    whole.filedOffsets =
        rows::all(database, rows::filedOffset, "WHERE firing = ? ORDER BY at_ms, probe, place", id);
    whole.alarmEvents = rows::all(database, rows::alarmEvent, "WHERE firing = ? ORDER BY id", id);
    whole.stepCorrections =
        rows::all(database, rows::stepCorrection, "WHERE firing = ? ORDER BY at_ms, id", id);
    whole.meterStands = rows::all(database, rows::meterStand, "WHERE firing = ? ORDER BY at_ms, id", id);
    whole.logEvents = rows::all(database, rows::event, "WHERE firing = ? ORDER BY at_ms, id", id);
    return whole;
}

FiringRecord wholeFiring(SQLite::Database& database, const Firing& firing, Pictures pictures) {
    FiringRecord whole = firingWithoutReadings(database, firing, pictures);
    whole.readings = readingsOf(database, whole.channels);
    return whole;
}

} // namespace ringhold
