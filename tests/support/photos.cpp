#include "tests/support/photos.h"

#include <QBuffer>
#include <QPainter>

namespace ringhold::test {

namespace {

QByteArray exifSegment(int orientation) {
    QByteArray exif("\xff\xe1\x00\x22" // APP1, 34 bytes with the length itself
                    "Exif\0\0"
                    "MM\0\x2a\0\0\0\x08" // big endian, the first directory follows
                    "\0\x01"             // one entry
                    "\x01\x12\0\x03\0\0\0\x01\0\0\0\0"
                    "\0\0\0\0",
                    36);
    exif[29] = static_cast<char>(orientation);
    return exif;
}

} // namespace

QImage paintedPhoto(int width, int height, bool ruler) {
    QImage image(width, height, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.fillRect(0, 0, width / 2, height, QColor(120, 20, 20));
    painter.fillRect(width / 2, 0, width - width / 2, height, QColor(170, 230, 170));
    if (ruler) {
        painter.fillRect(width / 2 - 200, height / 2 - 10, 400, 20, Qt::white);
        painter.setBrush(QColor(250, 240, 200));
        painter.drawEllipse(QPoint(width / 2, height / 2 + 140), 82, 82);
    }
    return image;
}

QByteArray photoJpeg(const QImage& image, int orientation) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "JPEG", 90);
    if (orientation != 0)
        bytes.insert(2, exifSegment(orientation));
    return bytes;
}

} // namespace ringhold::test
