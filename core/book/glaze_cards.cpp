#include "core/book/glaze_cards.h"

#include "core/book/read_sql.h"
#include "core/book/whole_firing.h"
#include "core/book/write_sql.h"

#include <nlohmann/json.hpp>

namespace ringhold {

namespace {

std::optional<double> degrees(const std::optional<Temperature>& temperature) {
    return temperature ? std::optional(temperature->celsius()) : std::nullopt;
}

std::string analysisText(const RecipeLine& line) {
    auto list = nlohmann::json::array();
    for (const auto& part : line.analysis)
        list.push_back({part.oxide, part.percent});
    return list.empty() ? std::string() : list.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

void writeParts(SQLite::Database& database, GlazeCardId id, const GlazeCard& card) {
    sql::run(database, "DELETE FROM glaze_habit WHERE card = ?", id);
    sql::run(database, "DELETE FROM recipe_line WHERE card = ?", id);
    int position = 0;
    for (const auto& habit : card.habits)
        sql::run(database,
                 "INSERT INTO glaze_habit (card, position, low_C, high_C, word) VALUES (?, ?, ?, ?, ?)", id,
                 position++, habit.low.celsius(), habit.high.celsius(), habit.word);
    position = 0;
    for (const auto& line : card.recipe)
        sql::run(database, R"sql(
            INSERT INTO recipe_line (card, position, material, percent, addition, batch_g, formula, analysis)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?))sql",
                 id, position++, line.material, line.percent, line.addition, line.batch_g, line.formula,
                 analysisText(line));
}

/// With the id given, or the next free one.
Result<GlazeCardId> insertCard(const Book& book, const GlazeCard& card, std::optional<GlazeCardId> id) {
    return sql::together(book, [&](SQLite::Database& database) {
        auto added = sql::insert<GlazeCardId>(book, R"sql(
            INSERT INTO glaze_card (id, name, cone, top_C, running, grow_low_C, grow_high_C,
                colour_temperatures, application, notes) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?))sql",
                                              id, card.name, card.cone, degrees(card.top), card.running,
                                              degrees(card.growLow), degrees(card.growHigh),
                                              card.colourTemperatures, card.application, card.notes);
        if (added)
            writeParts(database, *added, card);
        return added;
    });
}

} // namespace

Result<std::vector<GlazeCard>> GlazeCards::all() const {
    return sql::read(*m_book, [](SQLite::Database& database) {
        auto cards = rows::all(database, rows::glazeCard, "ORDER BY name");
        for (auto& card : cards)
            fillIn(database, card);
        return cards;
    });
}

Result<std::optional<GlazeCard>> GlazeCards::named(std::string_view name) const {
    return sql::read(*m_book, [&](SQLite::Database& database) {
        auto card = rows::first(database, rows::glazeCard, "WHERE name = ?", name);
        if (card)
            fillIn(database, *card);
        return card;
    });
}

Result<GlazeCardId> GlazeCards::add(const GlazeCard& card) {
    return insertCard(*m_book, card, std::nullopt);
}

Status GlazeCards::restore(const GlazeCard& card) {
    const auto restored = insertCard(*m_book, card, card.id);
    return restored ? Status() : Status(restored.error());
}

Status GlazeCards::alter(const GlazeCard& card) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        Status altered =
            sql::update(*m_book, R"sql(
            UPDATE glaze_card SET name = ?2, cone = ?3, top_C = ?4, running = ?5, grow_low_C = ?6,
                grow_high_C = ?7, colour_temperatures = ?8, application = ?9, notes = ?10
            WHERE id = ?1)sql",
                        card.id, card.name, card.cone, degrees(card.top), card.running, degrees(card.growLow),
                        degrees(card.growHigh), card.colourTemperatures, card.application, card.notes);
        if (altered)
            writeParts(database, card.id, card);
        return altered;
    });
}

Status GlazeCards::remove(GlazeCardId card) {
    return sql::update(*m_book, "DELETE FROM glaze_card WHERE id = ?", card);
}

} // namespace ringhold
