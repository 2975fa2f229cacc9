#include "tests/support/notebook_on_disk.h"
#include "ui/instrument/raw_lines_model.h"

#include <QAbstractItemModelTester>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

class RawLines : public testing::Test {
  protected:
    RawLines()
        : model(disk->preferences()), tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal) {}
    std::string shown(int row, RawLinesModel::Column column) const {
        return model.index(row, column).data().toString().toStdString();
    }
    static Sample degrees(double celsius, const char* label = "") {
        return {test::noonOfMarch(3), label, Quantity::temperature, celsius};
    }

    test::NotebookOnDisk disk;
    RawLinesModel model;
    QAbstractItemModelTester tester;
};

TEST_F(RawLines, TellsEachLineAndWhatItWasReadAs) {
    model.addLine(test::noonOfMarch(3), QStringLiteral("T1=1043.2C T2=open"), true);
    model.addSample(degrees(1043.2, "T1"));
    model.addSample({test::noonOfMarch(3), "T2", Quantity::temperature, std::nullopt});
    model.addLine(test::noonOfMarch(3), QStringLiteral("OK"), false);
    EXPECT_EQ(shown(0, RawLinesModel::Line), "T1=1043.2C T2=open");
    EXPECT_NE(shown(0, RawLinesModel::Understood).find("T1 1"), std::string::npos);
    EXPECT_NE(shown(0, RawLinesModel::Understood).find("043.2"), std::string::npos);
    EXPECT_NE(shown(0, RawLinesModel::Understood).find("T2 probe open"), std::string::npos);
    EXPECT_EQ(shown(1, RawLinesModel::Understood), "cannot be read");
    EXPECT_EQ(model.summary(), QStringLiteral("2 lines heard, 1 of them cannot be read"));
}

TEST_F(RawLines, AnInstrumentWithoutTextHasALineForEachValue) {
    model.addSample(degrees(20, "probe"));
    model.addSample({test::noonOfMarch(3), "volts", Quantity::lineVolts, 239});
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(shown(1, RawLinesModel::Line), "volts");
    EXPECT_EQ(shown(1, RawLinesModel::Understood), "239.0 V");
}

TEST_F(RawLines, DegreesAreTheChosenOnes) {
    model.addSample(degrees(100));
    ASSERT_TRUE(disk->preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    EXPECT_NE(shown(0, RawLinesModel::Understood).find("212.0"), std::string::npos);
}

TEST_F(RawLines, KeepsTheLastAndCountsAll) {
    for (int i = 0; i < RawLinesModel::mostRows + 5; ++i)
        model.addLine(test::noonOfMarch(3), QString::number(i), i % 2 == 0);
    EXPECT_EQ(model.rowCount(), RawLinesModel::mostRows);
    EXPECT_EQ(shown(0, RawLinesModel::Line), "5");
    EXPECT_EQ(model.heard(), RawLinesModel::mostRows + 5);
    EXPECT_EQ(model.unread(), 102);
    model.clear();
    EXPECT_EQ(model.summary(), QStringLiteral("Nothing heard yet"));
}

} // namespace
} // namespace ringhold
