#include "tests/support/photos.h"
#include "ui/ware/photo_file.h"

#include <QBuffer>
#include <QFile>
#include <QTemporaryDir>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace ringhold::test {
namespace {

bool isDarkRed(QColor colour) {
    return colour.red() > 80 && colour.green() < 60;
}

std::string refusalOf(const Result<TakenPhoto>& photo) {
    return photo ? "taken" : photo.error().text();
}

/// Where the dark half of the painted photo is to be after the turn: EXIF 2.32, tag 0112 (orientation).
struct Turn {
    int orientation;
    bool onItsSide;
    double x, y; ///< a place in the dark half, as a share of width and height
};

class PhotoTurn : public testing::TestWithParam<Turn> {};

} // namespace

TEST_P(PhotoTurn, IsTurnedAsItsExifSays) {
    const Turn turn = GetParam();
    const auto photo =
        takePhoto(photoJpeg(paintedPhoto(300, 200), turn.orientation), QStringLiteral("a.jpg"));
    ASSERT_TRUE(photo) << photo.error().text();
    EXPECT_EQ(photo->size, turn.onItsSide ? QSize(200, 300) : QSize(300, 200));
    EXPECT_EQ(photo->original, photo->size);
    const QImage kept = photoImage(photo->jpeg);
    ASSERT_EQ(kept.size(), photo->size);
    EXPECT_TRUE(isDarkRed(kept.pixelColor(int(turn.x * kept.width()), int(turn.y * kept.height()))));
    EXPECT_FALSE(
        isDarkRed(kept.pixelColor(int((1 - turn.x) * kept.width()), int((1 - turn.y) * kept.height()))));
}

INSTANTIATE_TEST_SUITE_P(Orientations, PhotoTurn,
                         testing::Values(Turn{0, false, 0.1, 0.5}, Turn{1, false, 0.1, 0.5},
                                         Turn{2, false, 0.9, 0.5}, Turn{3, false, 0.9, 0.5},
                                         Turn{4, false, 0.1, 0.5}, Turn{5, true, 0.5, 0.1},
                                         Turn{6, true, 0.5, 0.1}, Turn{7, true, 0.5, 0.9},
                                         Turn{8, true, 0.5, 0.9}));

TEST(PhotoFile, ALargeOneIsScaledDownUpright) {
    const auto photo = takePhoto(photoJpeg(paintedPhoto(4000, 3000), 6), QStringLiteral("a.jpg"));
    ASSERT_TRUE(photo) << photo.error().text();
    EXPECT_EQ(photo->original, QSize(3000, 4000));
    EXPECT_EQ(photo->size, QSize(1536, 2048));
    EXPECT_EQ(photoImage(photo->jpeg).size(), photo->size);
    EXPECT_EQ(photoImage(photo->jpeg, 100).size(), QSize(75, 100));
}

TEST(PhotoFile, ARestlessOneIsKeptWorseRatherThanTooLarge) {
    QImage noise(400, 400, QImage::Format_RGB32);
    std::mt19937 chance(3);
    for (int y = 0; y < noise.height(); ++y)
        for (int x = 0; x < noise.width(); ++x)
            noise.setPixel(x, y, static_cast<QRgb>(chance() | 0xff000000));
    const QByteArray bytes = photoJpeg(noise);
    const auto good = takePhoto(bytes, QStringLiteral("a.jpg"));
    ASSERT_TRUE(good);
    PhotoLimits limits;
    limits.largestKept_bytes = good->jpeg.size() * 3 / 4;
    const auto worse = takePhoto(bytes, QStringLiteral("a.jpg"), limits);
    ASSERT_TRUE(worse) << worse.error().text();
    EXPECT_LE(worse->jpeg.size(), limits.largestKept_bytes);
    limits.largestKept_bytes = 100;
    EXPECT_FALSE(takePhoto(bytes, QStringLiteral("a.jpg"), limits));
}

TEST(PhotoFile, WhatIsKeptCarriesNoTurnOfItsOwn) {
    const auto once = takePhoto(photoJpeg(paintedPhoto(300, 200), 6), QStringLiteral("a.jpg"));
    ASSERT_TRUE(once);
    const auto twice = takePhoto(once->jpeg, QStringLiteral("a.jpg"));
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->size, once->size);
}

TEST(PhotoFile, TransparentPicturesStandOnWhite) {
    QImage image(40, 40, QImage::Format_ARGB32);
    image.fill(Qt::transparent);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    const auto photo = takePhoto(bytes, QStringLiteral("a.png"));
    ASSERT_TRUE(photo) << photo.error().text();
    EXPECT_GT(photoImage(photo->jpeg).pixelColor(20, 20).lightness(), 250);
}

TEST(PhotoFile, RefusesWhatIsBrokenAndSaysSo) {
    const QByteArray whole = photoJpeg(paintedPhoto(300, 200), 6);
    const auto refused = [](const QByteArray& bytes) {
        return refusalOf(takePhoto(bytes, QStringLiteral("pot.jpg")));
    };
    EXPECT_THAT(refused({}), testing::HasSubstr("pot.jpg: this is no picture"));
    EXPECT_THAT(refused("a shopping list"), testing::HasSubstr("no picture that can be read"));
    EXPECT_THAT(refused(whole.first(whole.size() / 2)), testing::HasSubstr("cut off"));
    EXPECT_THAT(refused("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>"),
                testing::HasSubstr("no picture that can be read"));
    EXPECT_THAT(refused(whole.first(60)), testing::HasSubstr("pot.jpg"));
}

TEST(PhotoFile, RefusesTooManyPixelsBeforeDecoding) {
    PhotoLimits limits;
    limits.mostPixels = 50'000;
    EXPECT_THAT(refusalOf(takePhoto(photoJpeg(paintedPhoto(300, 200)), QStringLiteral("a.jpg"), limits)),
                testing::HasSubstr("300 by 200 pixels"));
    // a PNG's head alone that states 60000 by 60000
    const QByteArray head("\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\xea\x60\0\0\xea\x60\x08\x02\0\0\0\0\0\0\0", 33);
    EXPECT_NE(refusalOf(takePhoto(head, QStringLiteral("a.png"))), "taken");
}

TEST(PhotoFile, RefusesFilesThatAreMissingOrTooLarge) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("pot.jpg"));
    EXPECT_EQ(takePhoto(name).error().kind, ErrorKind::notFound);
    EXPECT_EQ(takePhoto(folder.path()).error().kind, ErrorKind::unreadable);
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(photoJpeg(paintedPhoto(300, 200)));
    file.close();
    EXPECT_TRUE(takePhoto(name));
    PhotoLimits limits;
    limits.largestFile_bytes = 500;
    EXPECT_THAT(refusalOf(takePhoto(name, limits)), testing::HasSubstr("too large"));
}

TEST(PhotoFile, AJpegsEndIsFoundPastItsPreview) {
    const QByteArray whole = photoJpeg(paintedPhoto(300, 200));
    EXPECT_TRUE(jpegIsWhole(whole));
    EXPECT_TRUE(jpegIsWhole(whole + "what a camera hangs on"));
    EXPECT_FALSE(jpegIsWhole(whole.chopped(2)));
    QByteArray preview("\xff\xe1\x00\x06\xff\xd9\xff\xd9", 8); // an end of image within a segment
    QByteArray withPreview = whole.chopped(2);
    withPreview.insert(2, preview);
    EXPECT_FALSE(jpegIsWhole(withPreview));
    EXPECT_FALSE(jpegIsWhole("\xff"));
    EXPECT_FALSE(jpegIsWhole({}));
}

} // namespace ringhold::test
