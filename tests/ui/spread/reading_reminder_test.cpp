#include "tests/support/live_climb.h"
#include "tests/support/screens.h"
#include "ui/spread/reading_reminder.h"
#include "ui/spread/spread_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QTest>

namespace ringhold::test {
namespace {

/// LiveClimb has no instrument: its readings are the potter's.
class ReadingReminderTest : public testing::Test {
  protected:
    void wait(int minutes) {
        m_firing.disk().clock().set(m_firing.disk().clock().now() + std::chrono::minutes(minutes));
    }

    LiveClimb m_firing{140};
    Theme m_theme;
};

TEST_F(ReadingReminderTest, ComesWhenTheLastReadingIsAsOldAsThePotterSet) {
    ASSERT_TRUE(m_firing.preferences().setReminderInterval(std::chrono::minutes(10)).ok());
    ReadingReminder reminder(m_firing.session(), m_firing.preferences());
    wait(9);
    reminder.refresh();
    EXPECT_TRUE(reminder.isHidden());
    wait(1);
    reminder.refresh();
    ASSERT_FALSE(reminder.isHidden());
    EXPECT_NE(reminder.findChild<QLabel*>()->text().indexOf(QStringLiteral("10 min")), -1);
    ASSERT_TRUE(m_firing.preferences().setReminderInterval(std::chrono::minutes(30)).ok());
    EXPECT_TRUE(reminder.isHidden()) << "the new interval counts at once";
}

TEST_F(ReadingReminderTest, GoesWithTheReadingThatItAskedFor) {
    ReadingReminder reminder(m_firing.session(), m_firing.preferences());
    wait(20);
    reminder.refresh();
    ASSERT_FALSE(reminder.isHidden());
    ASSERT_TRUE(m_firing.session()
                    .firing()
                    .writeReading(m_firing.disk().clock().now(), Temperature::fromCelsius(1241))
                    .ok());
    reminder.refresh();
    EXPECT_TRUE(reminder.isHidden());
}

TEST_F(ReadingReminderTest, TakesTheWritingLineForAReading) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    wait(20);
    SpreadPage page(m_firing.session(), m_firing.disk().notebook(), m_theme);
    present(page, 1000, 480);
    auto* reminder = page.findChild<ReadingReminder*>();
    ASSERT_TRUE(reminder->isVisible());
    keepScreens(page, m_theme, QStringLiteral("reading-reminder"));
    QTest::mouseClick(reminder->findChildren<QPushButton*>().front(), Qt::LeftButton);
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("Writing line"));
    type(QStringLiteral("1241"));
    press(Qt::Key_Return);
    EXPECT_EQ(m_firing.session().record().readings.back().value, 1241);
    EXPECT_FALSE(reminder->isVisible());
}

} // namespace
} // namespace ringhold::test
