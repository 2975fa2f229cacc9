#include "ui/ware/photo_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QImageWriter>
#include <QPainter>

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Photo", words);
}

Error refusal(ErrorKind kind, const QString& name, const QString& why) {
    return {kind, why.toStdString(), name.toStdString()};
}

constexpr std::array takenFormats{"jpeg", "png", "webp", "tiff", "bmp"};

bool isTaken(const QByteArray& format) {
    return std::ranges::any_of(takenFormats, [&](const char* taken) { return format == taken; });
}

quint8 byteAt(const QByteArray& bytes, qsizetype at) {
    return static_cast<quint8>(bytes.at(at));
}

/// Where the compressed picture begins, past the segments with EXIF and its small preview; -1 without.
qsizetype jpegScan(const QByteArray& bytes) {
    constexpr quint8 startOfScan = 0xda;
    qsizetype at = 2; // after the start of image
    while (at + 4 <= bytes.size() && byteAt(bytes, at) == 0xff) {
        const quint8 marker = byteAt(bytes, at + 1);
        if (marker == startOfScan)
            return at;
        if (marker == 0xff) // filling
            ++at;
        else
            at += 2 + (byteAt(bytes, at + 2) << 8 | byteAt(bytes, at + 3));
    }
    return -1;
}

QImage flattened(const QImage& image) {
    if (!image.hasAlphaChannel())
        return image.convertToFormat(QImage::Format_RGB32);
    QImage ground(image.size(), QImage::Format_RGB32);
    ground.fill(Qt::white);
    QPainter(&ground).drawImage(0, 0, image);
    return ground;
}

QByteArray asJpeg(const QImage& image, int quality) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, "jpeg");
    writer.setQuality(quality);
    return writer.write(image) ? bytes : QByteArray();
}

QByteArray asKept(const QImage& image, const PhotoLimits& limits) {
    constexpr int worst = 35;
    QByteArray bytes;
    for (int quality = limits.jpegQuality; quality >= worst; quality -= 10) {
        bytes = asJpeg(image, quality);
        if (bytes.size() <= limits.largestKept_bytes)
            return bytes;
    }
    return {};
}

bool turnsOnItsSide(QImageIOHandler::Transformations turn) {
    return turn.testFlag(QImageIOHandler::TransformationRotate90);
}

/// What of the picture's head forbids it; empty when all is well.
QString objection(QImageReader& reader, const QByteArray& bytes, const PhotoLimits& limits) {
    if (!reader.canRead() || !isTaken(reader.format()))
        return tr("this is no picture that can be read. Take JPEG, PNG, WebP, TIFF or BMP.");
    const QSize size = reader.size();
    if (size.isEmpty())
        return tr("this picture is broken.");
    if (static_cast<qint64>(size.width()) * size.height() > limits.mostPixels)
        return tr("this picture has %1 by %2 pixels: too large to be taken.")
            .arg(size.width())
            .arg(size.height());
    if (reader.format() == "jpeg" && !jpegIsWhole(bytes))
        return tr("this picture is cut off: copy it again.");
    return {};
}

} // namespace

bool jpegIsWhole(const QByteArray& bytes) {
    const qsizetype scan = jpegScan(bytes);
    return scan >= 0 && bytes.indexOf(QByteArrayLiteral("\xff\xd9"), scan) >= 0;
}

Result<TakenPhoto> takePhoto(const QString& file, const PhotoLimits& limits) {
    const QFileInfo info(file);
    if (!info.exists())
        return refusal(ErrorKind::notFound, file, tr("there is no such file."));
    if (info.size() > limits.largestFile_bytes)
        return refusal(ErrorKind::badInput, info.fileName(),
                       tr("this file has %1 MB: too large for a photo.").arg(info.size() >> 20));
    QFile opened(file);
    if (!info.isFile() || !opened.open(QIODevice::ReadOnly))
        return refusal(ErrorKind::unreadable, file, tr("this cannot be read."));
    return takePhoto(opened.read(limits.largestFile_bytes), info.fileName(), limits);
}

Result<TakenPhoto> takePhoto(const QByteArray& bytes, const QString& name, const PhotoLimits& limits) {
    QBuffer buffer;
    buffer.setData(bytes);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setDecideFormatFromContent(true);
    reader.setAutoTransform(true);
    if (const QString why = objection(reader, bytes, limits); !why.isEmpty())
        return refusal(ErrorKind::badInput, name, why);
    QSize original = reader.size();
    if (std::max(original.width(), original.height()) > limits.keptLongestSide_px)
        reader.setScaledSize(original.scaled(limits.keptLongestSide_px, limits.keptLongestSide_px,
                                             Qt::KeepAspectRatio)); // decoded small: little memory
    if (turnsOnItsSide(reader.transformation()))
        original.transpose();
    const QImage read = reader.read();
    if (read.isNull())
        return refusal(ErrorKind::badInput, name, tr("this picture is broken."));
    const QImage image = flattened(read);
    TakenPhoto taken{asKept(image, limits), image.size(), original};
    if (taken.jpeg.isEmpty())
        return refusal(ErrorKind::failed, name, tr("this picture could not be kept as JPEG."));
    return taken;
}

QImage photoImage(const QByteArray& jpeg, int side_px) {
    QBuffer buffer;
    buffer.setData(jpeg);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer, "jpeg");
    const QSize size = reader.size();
    if (side_px > 0 && std::max(size.width(), size.height()) > side_px)
        reader.setScaledSize(size.scaled(side_px, side_px, Qt::KeepAspectRatio));
    return reader.read();
}

} // namespace ringhold
