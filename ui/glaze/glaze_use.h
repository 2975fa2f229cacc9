// The firings that a glaze was in, and what came of it.
#pragma once

#include "core/book/reader.h"
#include "ui/session/preferences.h"

#include <QAbstractTableModel>

#include <vector>

namespace ringhold {

struct GlazeFiring {
    FiringSummary firing;
    std::vector<Piece> pieces;     ///< those that name the glaze
    std::vector<Outcome> outcomes; ///< theirs
};

/// The latest first. A piece's glaze names it whole; large and small letters are the same.
Result<std::vector<GlazeFiring>> glazeFirings(const BookReader& reader, const std::string& glaze);

enum class GlazeUseColumn { began, firing, kiln, peak, pieces, largest, grades };
inline constexpr int glazeUseColumns = 7;

/// A row a firing. Preferences outlive it.
class GlazeUseModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit GlazeUseModel(const Preferences& preferences, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_preferences(preferences) {}

    void show(std::vector<GlazeFiring> firings);
    const GlazeFiring& firing(int row) const { return m_firings[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const GlazeFiring& firing, GlazeUseColumn column) const;

    const Preferences& m_preferences;
    std::vector<GlazeFiring> m_firings;
};

} // namespace ringhold
