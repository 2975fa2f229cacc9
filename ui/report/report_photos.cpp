#include "ui/report/report_photos.h"

#include "core/report/report_words.h"
#include "ui/report/page_text.h"
#include "ui/report/report_sections.h"
#include "ui/report/report_talk.h"
#include "ui/theme/palette.h"
#include "ui/ware/photo_file.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int perRow = 5;
constexpr double gap = 8;
constexpr double captionHeight = 12;
constexpr std::size_t fewPhotos = 10;
constexpr int shrunkSide_px = 480; ///< at the thumbnail's 93 pt some 370 a inch
constexpr int shrunkQuality = 82;

PageType captionType() {
    return {.points = 7.5, .ink = builtInPalettes().paper.soft};
}

QByteArray bytesOf(const std::string& jpeg) {
    return QByteArray::fromRawData(jpeg.data(), static_cast<qsizetype>(jpeg.size()));
}

struct Thumbnail {
    QImage picture;
    QString words;
};

void take(const ReportedPiece& piece, std::size_t photo, std::vector<Thumbnail>& taken) {
    if (photo >= piece.photos.size())
        return;
    const auto& [caption, jpeg] = piece.photos[photo];
    QImage picture = photoImage(bytesOf(jpeg), shrunkSide_px);
    if (!picture.isNull())
        taken.push_back(
            {std::move(picture),
             QString::fromStdString(photo == 0 || caption.empty() ? photoWords(piece) : caption)});
}

std::vector<Thumbnail> thumbnailsOf(const ReportContent& content) {
    std::vector<Thumbnail> taken;
    for (const auto& piece : content.ware)
        take(piece, 0, taken);
    for (const auto& piece : content.ware)
        for (std::size_t photo = 1; photo < piece.photos.size() && taken.size() < fewPhotos; ++photo)
            take(piece, photo, taken);
    return taken;
}

/// The middle of a picture in the middle of its square.
void paintThumbnail(QPainter& painter, const Thumbnail& thumbnail, const QRectF& square) {
    const QImage& picture = thumbnail.picture;
    const double side = std::min(picture.width(), picture.height());
    const QRectF middle((picture.width() - side) / 2, (picture.height() - side) / 2, side, side);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(square, picture, middle);
    const auto& paper = builtInPalettes().paper;
    painter.setPen(QPen(paper.faint, 0.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(square);
    PageText(thumbnail.words, captionType(), square.width())
        .paint(painter, square.bottomLeft() + QPointF(0, 2));
}

PageBlock rowOf(const std::vector<Thumbnail>& thumbnails, double width) {
    const double side = (width - gap * (perRow - 1)) / perRow;
    double words = captionHeight;
    for (const auto& thumbnail : thumbnails)
        words = std::max(words, PageText(thumbnail.words, captionType(), side).height() + 2);
    PageBlock block;
    block.height = side + words;
    block.gapBefore = 5;
    block.paint = [thumbnails, side](QPainter& painter, QPointF at) {
        for (const auto& thumbnail : thumbnails) {
            paintThumbnail(painter, thumbnail, QRectF(at, QSizeF(side, side)));
            at.rx() += side + gap;
        }
    };
    return block;
}

} // namespace

void shrinkPhotos(ReportContent& content) {
    for (auto& piece : content.ware)
        for (auto& photo : piece.photos) {
            const QImage picture = photoImage(bytesOf(photo.jpeg), shrunkSide_px);
            QBuffer small;
            small.open(QIODevice::WriteOnly);
            if (picture.isNull() || !picture.save(&small, "JPEG", shrunkQuality))
                photo.jpeg.clear();
            else
                photo.jpeg = small.data().toStdString();
        }
}

void addPhotos(PageFlow& flow, const ReportContent& content) {
    const auto thumbnails = thumbnailsOf(content);
    if (thumbnails.empty())
        return;
    PageBlock heading = headingBlock(ReportTalk::tr("Photos"), flow.width());
    heading.gapBefore = 12;
    flow.add(std::move(heading));
    for (std::size_t i = 0; i < thumbnails.size(); i += perRow) {
        const auto first = thumbnails.begin() + static_cast<std::ptrdiff_t>(i);
        const auto count = std::min<std::size_t>(perRow, thumbnails.size() - i);
        flow.add(rowOf({first, first + static_cast<std::ptrdiff_t>(count)}, flow.width()));
    }
}

} // namespace ringhold
