// Photos made for tests.
#pragma once

#include <QByteArray>
#include <QImage>

namespace ringhold::test {

/// Left half dark red, right half light green, so that a turn shows; `ruler`: a white bar of 400 by 20 pixels
/// in the middle and a crystal's disc, 164 pixels wide, below it.
QImage paintedPhoto(int width, int height, bool ruler = false);

/// A JPEG of it. `orientation` 1 to 8 is put into an EXIF segment; 0 writes none.
QByteArray photoJpeg(const QImage& image, int orientation = 0);

} // namespace ringhold::test
