#include "ui/ware/photo_model.h"

#include "core/book/ware_finds.h"
#include "ui/session/notebook.h"
#include "ui/ware/measure_window.h"
#include "ui/ware/photo_file.h"

#include <algorithm>

namespace ringhold {

namespace {

QByteArray bytesOf(const std::string& jpeg) {
    return {jpeg.data(), static_cast<qsizetype>(jpeg.size())};
}

/// Of the picture's width and height.
PhotoPoint share(QPointF mark, const Photo& photo) {
    return {std::clamp(mark.x() / photo.width, 0.0, 1.0), std::clamp(mark.y() / photo.height, 0.0, 1.0)};
}

} // namespace

bool PhotoModel::refuse(const QString& why) {
    Q_EMIT troubled(why);
    return false;
}

void PhotoModel::show(std::optional<PieceId> piece) {
    if (piece == m_piece)
        return;
    m_piece = piece;
    reload();
}

void PhotoModel::reload() {
    WareFinds finds(m_notebook.book());
    auto photos = m_piece ? finds.photos(*m_piece) : std::vector<Photo>();
    if (!photos) {
        refuse(QString::fromStdString(photos.error().text()));
        return;
    }
    std::vector<Row> rows;
    for (auto& photo : *photos) {
        auto jpeg = finds.picture(photo.id);
        auto measures = finds.measures(photo.id);
        if (jpeg)
            photo.jpeg = std::move(*jpeg);
        const QImage thumbnail = photoImage(bytesOf(photo.jpeg), thumbnailSide_px);
        rows.push_back(
            {std::move(photo), thumbnail, measures ? std::move(*measures) : std::vector<PhotoMeasure>()});
    }
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

QImage PhotoModel::picture(int row) const {
    return photoImage(bytesOf(photo(row).jpeg));
}

std::optional<PhotoId> PhotoModel::take(const QString& file) {
    const auto taken = takePhoto(file);
    if (!taken || !m_piece) {
        refuse(taken ? tr("Photos belong to a piece.") : QString::fromStdString(taken.error().text()));
        return std::nullopt;
    }
    Photo photo;
    photo.piece = *m_piece;
    photo.width = taken->size.width();
    photo.height = taken->size.height();
    photo.jpeg.assign(taken->jpeg.constData(), static_cast<std::size_t>(taken->jpeg.size()));
    const auto id = WareFinds(m_notebook.book()).add(photo);
    if (!id) {
        refuse(QString::fromStdString(id.error().text()));
        return std::nullopt;
    }
    reload();
    return *id;
}

bool PhotoModel::putBack(const Photo& photo, const std::vector<PhotoMeasure>& measures) {
    WareFinds finds(m_notebook.book());
    if (const auto back = finds.restore(photo); !back)
        return refuse(QString::fromStdString(back.error().text()));
    for (const auto& measure : measures)
        if (const auto back = finds.restore(measure); !back)
            return refuse(QString::fromStdString(back.error().text()));
    reload();
    return true;
}

bool PhotoModel::takeAway(PhotoId photo) {
    if (const auto removed = WareFinds(m_notebook.book()).remove(photo); !removed)
        return refuse(QString::fromStdString(removed.error().text()));
    reload();
    return true;
}

bool PhotoModel::addMeasure(PhotoId on, const QString& what, const PhotoLength& length, double known_mm,
                            const PhotoMarks& marks) {
    const auto row = std::ranges::find(m_rows, on, [](const Row& r) { return r.photo.id; });
    if (row == m_rows.end() || !marks.complete())
        return false;
    PhotoMeasure measure;
    measure.photo = on;
    measure.what = what.toStdString();
    measure.known_mm = known_mm;
    measure.measured_mm = length.size_mm;
    measure.error_mm = length.sd_mm;
    measure.ends.emplace();
    for (int i = 0; i < photoMarks; ++i)
        (*measure.ends)[static_cast<std::size_t>(i)] =
            share(*marks.at(static_cast<PhotoMark>(i)), row->photo);
    if (const auto id = WareFinds(m_notebook.book()).add(measure); !id)
        return refuse(QString::fromStdString(id.error().text()));
    reload();
    return true;
}

int PhotoModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QString PhotoModel::words(const Row& row) const {
    QStringList words;
    if (!row.photo.caption.empty())
        words << QString::fromStdString(row.photo.caption);
    for (const auto& measure : row.measures)
        words << (measure.what == tr("crystal").toStdString() ? QString()
                                                              : QString::fromStdString(measure.what) + u' ') +
                     lengthWords({measure.measured_mm, measure.error_mm});
    return words.isEmpty() ? tr("no caption") : words.join(QStringLiteral(", "));
}

QVariant PhotoModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto& row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return words(row);
    case Qt::EditRole:
        return QString::fromStdString(row.photo.caption);
    case Qt::DecorationRole:
        return row.thumbnail;
    default:
        return {};
    }
}

Qt::ItemFlags PhotoModel::flags(const QModelIndex& index) const {
    return index.isValid() ? QAbstractListModel::flags(index) | Qt::ItemIsEditable : Qt::NoItemFlags;
}

bool PhotoModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole)
        return false;
    auto& kept = m_rows[static_cast<std::size_t>(index.row())].photo;
    Photo changed = kept;
    changed.caption = value.toString().trimmed().toStdString();
    if (changed.caption == kept.caption)
        return true;
    if (const auto done = WareFinds(m_notebook.book()).alter(changed); !done)
        return refuse(QString::fromStdString(done.error().text()));
    kept = std::move(changed);
    Q_EMIT dataChanged(index, index);
    return true;
}

} // namespace ringhold
