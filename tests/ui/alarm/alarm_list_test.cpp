#include "tests/support/screens.h"
#include "tests/support/silent_kiln.h"
#include "ui/alarm/alarm_list.h"
#include "ui/alarm/alarm_list_model.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class AlarmListTest : public testing::Test {
  protected:
    AlarmListTest() {
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        QObject::connect(&kiln.session(), &FiringSession::alarmsKept, [this] { ++kept; });
    }
    std::string cell(const AlarmListModel& model, int row, int column) {
        return model.index(row, column).data().toString().toStdString();
    }

    SilentKiln kiln;
    LiveAlarms alarms{kiln.notebook()};
    Theme theme;
    int kept = 0;
};

TEST_F(AlarmListTest, TellsEachAlarmAndItsAnswer) {
    qputenv("USER", "ana");
    AlarmListModel model(alarms, kiln.notebook());
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    kiln.waitMinutes(3);
    ASSERT_EQ(model.rowCount(), 1);
    EXPECT_EQ(cell(model, 0, AlarmListModel::Level), "Warning");
    EXPECT_EQ(cell(model, 0, AlarmListModel::Title), "Readings have stopped");
    EXPECT_EQ(cell(model, 0, AlarmListModel::Kiln), "Heron");
    EXPECT_EQ(cell(model, 0, AlarmListModel::Since), "since 13:03, 0 s");
    EXPECT_EQ(cell(model, 0, AlarmListModel::Answer), "nobody has answered");
    EXPECT_NE(cell(model, 0, AlarmListModel::Evidence).find("Nothing for 3 min"), std::string::npos);
    EXPECT_TRUE(model.row(0).mayAcknowledge);
    alarms.acknowledge(kiln.session(), AlarmCause::readingsStopped);
    EXPECT_EQ(cell(model, 0, AlarmListModel::Answer), "acknowledged by ana at 13:03");
    EXPECT_FALSE(model.row(0).mayAcknowledge);
}

TEST_F(AlarmListTest, KeepsWhatIsOverAndAnsweredFromTheBook) {
    AlarmListModel model(alarms, kiln.notebook());
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    kiln.waitMinutes(3);
    alarms.acknowledge(kiln.session(), AlarmCause::readingsStopped);
    kiln.wait(std::chrono::minutes(1));
    kiln.readAgain();
    for (int i = 0; i < 4; ++i) {
        kiln.waitMinutes(1);
        kiln.readAgain();
    }
    ASSERT_TRUE(alarms.alarms().empty());
    ASSERT_TRUE(QTest::qWaitFor([&] { return kept >= 3; }, 10000));
    model.readBook();
    ASSERT_EQ(model.rowCount(), 1);
    EXPECT_FALSE(model.row(0).onBoard);
    EXPECT_NE(cell(model, 0, AlarmListModel::Since).find("over"), std::string::npos);
    EXPECT_NE(cell(model, 0, AlarmListModel::Answer).find("acknowledged by"), std::string::npos);
}

TEST_F(AlarmListTest, IsAnsweredByTheKeyboard) {
    AlarmList list(alarms, kiln.notebook(), theme);
    EXPECT_FALSE(list.isModal());
    kiln.waitMinutes(3);
    list.open();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&list));
    keepScreens(list, theme, QStringLiteral("alarm-list"));
    expectUsableByKeyboard(list);
    list.findChild<QTableView*>()->setFocus();
    press(Qt::Key_A, Qt::AltModifier); // the button is seen to go down before it acts
    const auto acknowledged = [&] { return kiln.session().alarms().alarms().front().acknowledged; };
    EXPECT_TRUE(QTest::qWaitFor([&] { return acknowledged().has_value(); }));
    press(Qt::Key_Escape);
    EXPECT_FALSE(list.isVisible());
}

} // namespace
} // namespace ringhold::test
