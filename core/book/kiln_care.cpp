#include "core/book/kiln_care.h"

#include "core/book/read_sql.h"
#include "core/book/record_text.h"
#include "core/book/write_sql.h"

namespace ringhold {

namespace {

/// With the id given, or the next free one.
Result<ServiceId> insertService(const Book& book, const ServiceEntry& entry, std::optional<ServiceId> id) {
    return sql::insert<ServiceId>(
        book, "INSERT INTO service (id, kiln, probe, at_ms, kind, words) VALUES (?, ?, ?, ?, ?, ?)", id,
        entry.kiln, entry.probe, entry.at, bookText(entry.kind), entry.words);
}

} // namespace

Result<std::vector<ServiceEntry>> KilnCare::services(KilnId kiln) const {
    return sql::readAll(*m_book, rows::service, "WHERE kiln = ? ORDER BY at_ms, id", kiln);
}

Result<ServiceId> KilnCare::add(const ServiceEntry& entry) {
    return insertService(*m_book, entry, std::nullopt);
}

Status KilnCare::restore(const ServiceEntry& entry) {
    const auto restored = insertService(*m_book, entry, entry.id);
    return restored ? Status() : Status(restored.error());
}

Status KilnCare::alter(const ServiceEntry& entry) {
    return sql::update(
        *m_book, "UPDATE service SET kiln = ?2, probe = ?3, at_ms = ?4, kind = ?5, words = ?6 WHERE id = ?1",
        entry.id, entry.kiln, entry.probe, entry.at, bookText(entry.kind), entry.words);
}

Status KilnCare::remove(ServiceId entry) {
    return sql::update(*m_book, "DELETE FROM service WHERE id = ?", entry);
}

Result<int> KilnCare::coldLooks(FiringId firing) const {
    return sql::read(*m_book, [&](SQLite::Database& database) {
        SQLite::Statement query(database, "SELECT count(*) FROM look JOIN pack ON pack.id = look.pack "
                                          "WHERE pack.firing = ? AND cold AND NOT struck");
        query.bind(1, static_cast<std::int64_t>(firing));
        return query.executeStep() ? query.getColumn(0).getInt() : 0;
    });
}

Result<std::vector<ChecklistItem>> KilnCare::checklist() const {
    return sql::readAll(*m_book, rows::checklistItem, "ORDER BY position, id");
}

Status KilnCare::setChecklist(std::span<const ChecklistItem> items) {
    return sql::together(*m_book, [&](SQLite::Database& database) -> Status {
        sql::run(database, "DELETE FROM checklist_item");
        int position = 0;
        for (const auto& item : items)
            sql::run(database, "INSERT INTO checklist_item (position, words, kind) VALUES (?, ?, ?)",
                     position++, item.words, bookText(item.kind));
        return {};
    });
}

} // namespace ringhold
