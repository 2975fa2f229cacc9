#include "tests/support/notebook_on_disk.h"
#include "tests/support/photos.h"
#include "ui/ware/photo_model.h"

#include <QAbstractItemModelTester>
#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(PhotoModelRows, KeepTheirContractWhilePhotosComeAndGo) {
    test::NotebookOnDisk book;
    const auto kiln = book.addKiln("Heron");
    const auto firing = book.addFiring(kiln, {.began = test::noonOfMarch(2)});
    const auto vase = book.addPiece(firing, "vase", "frost");
    const auto bowl = book.addPiece(firing, "bowl", "frost");
    const QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("vase.jpg")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(test::photoJpeg(test::paintedPhoto(640, 480)));
    file.close();

    PhotoModel model(book.notebook());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    model.show(vase);
    const auto first = model.take(file.fileName());
    ASSERT_TRUE(first);
    ASSERT_TRUE(model.take(file.fileName()));
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_TRUE(model.setData(model.index(0, 0), QStringLiteral("shoulder")));
    EXPECT_EQ(model.photo(0).caption, "shoulder");
    EXPECT_FALSE(model.picture(0).isNull());
    EXPECT_TRUE(model.takeAway(*first));
    EXPECT_EQ(model.rowCount(), 1);
    model.show(bowl);
    EXPECT_EQ(model.rowCount(), 0);
    model.show(std::nullopt);
    EXPECT_FALSE(model.take(folder.filePath(QStringLiteral("no-such.jpg"))));
}

} // namespace
} // namespace ringhold
