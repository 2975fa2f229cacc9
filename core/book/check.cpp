#include "core/book/check.h"

#include "core/book/book.h"
#include "core/book/open.h"
#include "core/book/sql.h"
#include "core/plan/plan_file.h"

#include <map>

namespace ringhold {

namespace {

using Findings = std::vector<Finding>;

std::string text(SQLite::Statement& row, int column) {
    return row.getColumn(column).getString();
}

/// Each row of the query is a finding; its columns, joined, say what.
void findRows(SQLite::Database& database, FindingKind kind, const char* query, Findings& findings) {
    SQLite::Statement rows(database, query);
    while (rows.executeStep()) {
        std::string what;
        for (int i = 0; i < rows.getColumnCount(); ++i)
            what += text(rows, i);
        findings.push_back({kind, what});
    }
}

void checkIntegrity(SQLite::Database& database, Findings& findings) {
    SQLite::Statement rows(database, "PRAGMA integrity_check");
    while (rows.executeStep())
        if (text(rows, 0) != "ok")
            findings.push_back({FindingKind::damage, text(rows, 0)});
}

void checkOrphans(SQLite::Database& database, Findings& findings) {
    SQLite::Statement rows(database, "PRAGMA foreign_key_check");
    while (rows.executeStep()) {
        const std::string row = rows.getColumn(1).isNull() ? "" : " " + text(rows, 1);
        findings.push_back({FindingKind::orphan,
                            text(rows, 0) + row + " belongs to a " + text(rows, 2) + " that is not there"});
    }
}

/// Every table, index and trigger with the statement that made it.
std::map<std::string, std::string> formOf(SQLite::Database& database) {
    std::map<std::string, std::string> form;
    SQLite::Statement rows(database, "SELECT type || ' ' || name, ifnull(sql, '') FROM sqlite_schema "
                                     "WHERE name NOT LIKE 'sqlite\\_stat%' ESCAPE '\\'");
    while (rows.executeStep())
        form[text(rows, 0)] = text(rows, 1);
    return form;
}

void checkForm(SQLite::Database& database, Findings& findings) {
    SQLite::Database model(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    if (const auto made = bringUpToDate(model, ":memory:", Backup::none); made.error)
        throw std::runtime_error(made.error->what);
    const auto wanted = formOf(model);
    const auto found = formOf(database);
    for (const auto& [name, sql] : wanted) {
        const auto same = found.find(name);
        if (same == found.end())
            findings.push_back({FindingKind::form, name + " is missing"});
        else if (same->second != sql)
            findings.push_back({FindingKind::form, name + " is not as it should be"});
    }
    for (const auto& entry : found)
        if (!wanted.contains(entry.first))
            findings.push_back({FindingKind::form, entry.first + " does not belong to a book"});
}

void checkSums(SQLite::Database& database, Findings& findings) {
    findRows(database, FindingKind::sum, R"sql(
        SELECT 'channel ', id, ' says it has ', readings, ' readings, it has ', counted FROM
            (SELECT id, readings, (SELECT count(*) FROM reading WHERE channel = channel.id AND NOT struck)
                AS counted FROM channel)
        WHERE readings <> counted)sql",
             findings);
    findRows(database, FindingKind::sum, R"sql(
        SELECT 'channel ', id, ' is wrong about its last reading' FROM channel
        WHERE last_ms IS NOT (SELECT max(at_ms) FROM reading WHERE channel = channel.id))sql",
             findings);
    findRows(database, FindingKind::sum, R"sql(
        SELECT 'channel ', id, ' says its peak is ', peak, ', it is ', ifnull(found, 'nowhere') FROM
            (SELECT id, peak, (SELECT max(value) FROM reading WHERE channel = channel.id AND NOT struck)
                AS found FROM channel)
        WHERE peak IS NOT NULL AND peak IS NOT found)sql",
             findings);
}

/// What is searched must be what stands in the book.
void checkWords(SQLite::Database& database, Findings& findings) {
    findRows(database, FindingKind::sum, R"sql(
        SELECT 'the words of firing ', firing, ' are not indexed as they stand in the book' FROM firing_words
            LEFT JOIN words ON words.rowid = firing_words.firing
        WHERE words.text IS NOT firing_words.text)sql",
             findings);
}

void checkSense(SQLite::Database& database, Findings& findings) {
    findRows(database, FindingKind::sense, R"sql(
        SELECT 'channel ', channel.id, ' has a probe of another kiln' FROM channel
            JOIN firing ON firing.id = channel.firing JOIN probe ON probe.id = channel.probe
        WHERE probe.kiln <> firing.kiln)sql",
             findings);
    findRows(database, FindingKind::sense, R"sql(
        SELECT 'service ', service.id, ' was done to a probe of another kiln' FROM service
            JOIN probe ON probe.id = service.probe WHERE probe.kiln <> service.kiln)sql",
             findings);
    findRows(database, FindingKind::sense, R"sql(
        SELECT 'the offset filed by firing ', firing.id, ' is of another kiln' FROM filed_offset
            JOIN firing ON firing.id = filed_offset.firing JOIN probe ON probe.id = filed_offset.probe
        WHERE filed_offset.kiln <> firing.kiln OR filed_offset.kiln <> probe.kiln)sql",
             findings);
    findRows(database, FindingKind::sense, R"sql(
        SELECT 'the book has lost its id' WHERE NOT EXISTS
            (SELECT 1 FROM preference WHERE name = 'book_id' AND value <> ''))sql",
             findings);
    SQLite::Statement plans(database, "SELECT id, plan FROM firing WHERE plan IS NOT NULL");
    while (plans.executeStep())
        if (const auto plan = parsePlan(text(plans, 1), "the plan of firing " + text(plans, 0)); !plan)
            findings.push_back({FindingKind::sense, plan.error().text()});
}

/// One after the other; a part that damage breaks off is a finding, the rest goes on.
void checkAll(const Book& book, Findings& findings) {
    for (const auto check : {checkIntegrity, checkOrphans, checkForm, checkSums, checkWords, checkSense}) {
        const Status done = sql::guarded(book.file(), [&]() -> Status {
            check(book.database(), findings);
            return {};
        });
        if (!done)
            findings.push_back({FindingKind::damage, done.error().what});
    }
}

} // namespace

std::string_view name(FindingKind kind) {
    switch (kind) {
    case FindingKind::damage:
        return "damage";
    case FindingKind::form:
        return "form";
    case FindingKind::orphan:
        return "orphan";
    case FindingKind::sum:
        return "sum";
    case FindingKind::sense:
        return "sense";
    }
    return {};
}

Result<std::vector<Finding>> checkBook(const std::filesystem::path& file) {
    if (const Status fine = checkBookFile(file); !fine)
        return fine.error();
    Findings findings;
    const auto book = Book::open(file, Access::read);
    if (book)
        checkAll(*book, findings);
    else if (book.error().kind == ErrorKind::unreadable)
        findings.push_back({FindingKind::damage, book.error().what});
    else
        return book.error();
    return findings;
}

} // namespace ringhold
