#include "ui/past/found_firings.h"

#include "ui/past/firings_model.h"

namespace ringhold {

namespace {

Result<std::set<FiringId>> idsOf(const BookReader& reader, const FiringFilter& filter) {
    const auto found = reader.firings(filter);
    if (!found)
        return found.error();
    std::set<FiringId> ids;
    for (const auto& firing : *found)
        ids.insert(firing.id);
    return ids;
}

} // namespace

bool hasFields(const FiringFilter& filter) {
    return filter.kiln || filter.from || filter.before ||
           !(filter.glaze + filter.cone + filter.grade).empty();
}

FoundFirings::FoundFirings(FiringsModel& firings, QObject* parent)
    : QSortFilterProxyModel(parent), m_firings(firings) {
    setSourceModel(&firings);
    setSortRole(FiringsModel::sortRole);
}

Status FoundFirings::find(const BookReader& reader, const FiringFilter& filter) {
    Result<std::set<FiringId>> withWords = std::set<FiringId>();
    std::optional<std::set<FiringId>> letThrough;
    FiringFilter words;
    words.words = filter.words;
    FiringFilter fields = filter;
    fields.words.clear();
    if (!filter.words.empty())
        withWords = idsOf(reader, words);
    if (!withWords)
        return withWords.error();
    if (hasFields(fields)) {
        auto ids = idsOf(reader, fields);
        if (!ids)
            return ids.error();
        letThrough = std::move(*ids);
    }
    m_words = QString::fromStdString(filter.words);
    m_withWords = std::move(*withWords);
    m_letThrough = std::move(letThrough);
    invalidateFilter();
    return {};
}

bool FoundFirings::filterAcceptsRow(int row, const QModelIndex& parent) const {
    const FiringId id = m_firings.firing(row).id;
    if (m_letThrough && !m_letThrough->contains(id))
        return false;
    const QString line = m_firings.index(row, 0, parent).data(FiringsModel::wordsRole).toString();
    return m_words.isEmpty() || line.contains(m_words, Qt::CaseInsensitive) || m_withWords.contains(id);
}

} // namespace ringhold
