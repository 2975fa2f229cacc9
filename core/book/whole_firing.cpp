#include "core/book/whole_firing.h"

#include "core/book/record_text.h"
#include "core/book/rows.h"

#include <algorithm>
#include <stdexcept>

namespace ringhold {

namespace {

constexpr const char* ofChannel = "WHERE channel = ? ORDER BY at_ms, seq";

/// Channel after channel, as they lie in the book, then put in order of time.
std::vector<Reading> readingsOf(SQLite::Database& database, const std::vector<Channel>& channels) {
    std::vector<Reading> readings;
    for (const auto& channel : channels) {
        const auto some = rows::all(database, rows::reading, ofChannel, channel.id);
        readings.insert(readings.end(), some.begin(), some.end());
    }
    if (channels.size() > 1)
        std::stable_sort(readings.begin(), readings.end(),
                         [](const Reading& a, const Reading& b) { return a.at < b.at; });
    return readings;
}

std::vector<GlazeCard> cardsNamedBy(SQLite::Database& database, const std::vector<Piece>& pieces) {
    std::vector<GlazeCard> cards;
    for (const auto& piece : pieces)
        for (const auto& name : glazeNames(piece.glaze)) {
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
    auto outcomes = rows::all(database, rows::outcome, (std::string(ofPieces) + "piece").c_str(), firing);
    for (auto& outcome : outcomes) {
        SQLite::Statement faults(database, "SELECT fault FROM outcome_fault WHERE piece = ?");
        sql::bindAll(faults, outcome.piece);
        while (faults.executeStep())
            if (const auto fault = fromBookText<WareFault>(faults.getColumn(0).getString()))
                outcome.knownFaults.insert(*fault);
    }
    return outcomes;
}

FiringRecord wholeFiring(SQLite::Database& database, const Firing& firing, Pictures pictures) {
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
    whole.readings = readingsOf(database, whole.channels);
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

} // namespace ringhold
