#include "ui/exchange/file_draft.h"

#include "core/book/firing_intake.h"
#include "core/exchange/file.h"

namespace ringhold {

namespace {

constexpr std::size_t shownRows = 40;

} // namespace

Result<FileDraft> FileDraft::open(const std::filesystem::path& file) {
    auto bytes = readFile(file);
    if (!bytes)
        return bytes.error();
    FileDraft draft;
    draft.m_file = file;
    draft.m_bytes = std::move(*bytes);
    draft.m_json = looksLikeJson(draft.m_bytes);
    if (draft.m_json)
        return draft;
    auto preview = previewCsv(draft.m_bytes, {}, shownRows);
    if (!preview) {
        Error error = preview.error();
        error.file = file.string();
        return error;
    }
    draft.m_preview = std::move(*preview);
    return draft;
}

void FileDraft::reckon(const Book& book) {
    m_brought.reset();
    m_known.reset();
    m_trouble.reset();
    if (!m_json)
        if (auto preview = previewCsv(m_bytes, options, shownRows))
            m_preview = std::move(*preview);
    auto brought = broughtFrom(m_bytes, m_file, options, as);
    if (!brought) {
        m_trouble = brought.error();
        return;
    }
    auto known = sameFiring(book, brought->record);
    if (!known) {
        m_trouble = known.error();
        return;
    }
    m_brought = std::move(*brought);
    m_known = std::move(*known);
}

} // namespace ringhold
