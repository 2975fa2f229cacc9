// The photos of one piece, as a list.
#pragma once

#include "core/firing/ware_records.h"
#include "ui/ware/photo_measure.h"

#include <QAbstractListModel>
#include <QImage>

#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

/// A row a photo: a small picture, and its caption with what was measured on it. The caption can be edited.
/// What returns true is in the book, else troubled() said why. The notebook outlives it.
class PhotoModel : public QAbstractListModel {
    Q_OBJECT

  public:
    static constexpr int thumbnailSide_px = 64;

    explicit PhotoModel(Notebook& notebook, QObject* parent = nullptr)
        : QAbstractListModel(parent), m_notebook(notebook) {}

    /// Nothing shows none.
    void show(std::optional<PieceId> piece);
    /// As the book has it now.
    void reload();
    std::optional<PieceId> piece() const { return m_piece; }
    const Photo& photo(int row) const { return m_rows[static_cast<std::size_t>(row)].photo; }
    QImage picture(int row) const;
    const std::vector<PhotoMeasure>& measures(int row) const {
        return m_rows[static_cast<std::size_t>(row)].measures;
    }

    /// A file, turned right and scaled down; gives its id in the book.
    std::optional<PhotoId> take(const QString& file);
    /// One that was taken away.
    bool putBack(const Photo& photo, const std::vector<PhotoMeasure>& measures);
    bool takeAway(PhotoId photo);
    /// `what`: "crystal", "ring 2".
    bool addMeasure(PhotoId on, const QString& what, const PhotoLength& length, double known_mm,
                    const PhotoMarks& marks);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void troubled(const QString& why);

  private:
    struct Row {
        Photo photo;
        QImage thumbnail;
        std::vector<PhotoMeasure> measures;
    };
    bool refuse(const QString& why);
    QString words(const Row& row) const;

    Notebook& m_notebook;
    std::optional<PieceId> m_piece;
    std::vector<Row> m_rows;
};

} // namespace ringhold
