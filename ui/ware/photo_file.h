// A photo as it is taken into the book: turned upright, scaled down, as JPEG.
#pragma once

#include "core/base/result.h"

#include <QByteArray>
#include <QImage>
#include <QSize>
#include <QString>

namespace ringhold {

/// What is taken and what is kept. Everything is checked before a picture is decoded.
struct PhotoLimits {
    qint64 largestFile_bytes = 64LL << 20;
    qint64 mostPixels = 200'000'000; ///< as the file states them
    int keptLongestSide_px = 2048;
    int jpegQuality = 85; ///< of 100; lowered by tens where the picture would be larger than
    qsizetype largestKept_bytes = 4'000'000; ///< this
};

/// Ready for the book.
struct TakenPhoto {
    QByteArray jpeg;
    QSize size;     ///< of the kept picture, upright
    QSize original; ///< as it was in the file, upright
};

/// Reads a JPEG, PNG, WebP, TIFF or BMP, turned as its EXIF says; what is transparent becomes white. notFound
/// or unreadable: the file; badInput: too large, of another kind, cut off or broken.
Result<TakenPhoto> takePhoto(const QString& file, const PhotoLimits& limits = {});
/// The same from memory; `name` is for the message.
Result<TakenPhoto> takePhoto(const QByteArray& bytes, const QString& name, const PhotoLimits& limits = {});

/// Whether a JPEG has its end: decoders show one that was cut off as if it were whole.
bool jpegIsWhole(const QByteArray& bytes);

/// A picture from the book, within a square of that side, or as it is kept for 0; null when it is broken.
QImage photoImage(const QByteArray& jpeg, int side_px = 0);

} // namespace ringhold
