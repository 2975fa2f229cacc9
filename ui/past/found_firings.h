// Those of the firings in the list that are being looked for.
#pragma once

#include "core/book/reader.h"

#include <QSortFilterProxyModel>

#include <optional>
#include <set>

namespace ringhold {

class FiringsModel;

/// Over a FiringsModel, which outlives it. A firing is found when its own line has the words, or the book
/// found them in its notes and ware, and when the book let it through the other fields.
class FoundFirings : public QSortFilterProxyModel {
    Q_OBJECT

  public:
    explicit FoundFirings(FiringsModel& firings, QObject* parent = nullptr);

    /// Asks the book anew.
    Status find(const BookReader& reader, const FiringFilter& filter);

  protected:
    bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

  private:
    FiringsModel& m_firings;
    QString m_words;
    std::set<FiringId> m_withWords;
    std::optional<std::set<FiringId>> m_letThrough; ///< nothing: all
};

/// Whether anything but words is asked for.
bool hasFields(const FiringFilter& filter);

} // namespace ringhold
