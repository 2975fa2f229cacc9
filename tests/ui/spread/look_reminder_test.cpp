#include "tests/support/live_climb.h"
#include "tests/support/screens.h"
#include "ui/spread/look_reminder.h"
#include "ui/spread/spread_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QPushButton>
#include <QSignalSpy>

namespace ringhold::test {
namespace {

class LookReminderTest : public testing::Test {
  protected:
    /// The clock goes on while the last reading stays.
    void wait(int minutes) {
        m_firing.disk().clock().set(m_firing.disk().clock().now() + std::chrono::minutes(minutes));
    }

    LiveClimb m_firing{145}; ///< cone 8 nearly down by the forecast's middle, cone 9 moving
    Theme m_theme;
};

TEST_F(LookReminderTest, RemindsOfALookThatIsDueAndNotMoreOftenThanWasSet) {
    m_firing.look(143, "8", 2);
    LookReminder reminder(m_firing.session(), m_firing.preferences());
    const auto next = nextLookOf(m_firing.session(), m_firing.preferences());
    ASSERT_TRUE(next);
    EXPECT_EQ(next->at, LiveClimb::at(143) + m_firing.preferences().reminderInterval());
    EXPECT_TRUE(reminder.isHidden()) << "somebody has just looked";
    wait(14);
    reminder.refresh();
    EXPECT_FALSE(reminder.isHidden());
    ASSERT_TRUE(m_firing.preferences().setReminderInterval(std::chrono::hours(1)).ok());
    reminder.refresh();
    EXPECT_TRUE(reminder.isHidden());
}

TEST_F(LookReminderTest, CanBePutOffAndComesAgain) {
    LookReminder reminder(m_firing.session(), m_firing.preferences());
    ASSERT_FALSE(reminder.isHidden()) << "nobody has looked though the cones move";
    reminder.show();
    QSignalSpy wanted(&reminder, &ReminderBar::actWanted);
    const auto buttons = reminder.findChildren<QPushButton*>();
    ASSERT_EQ(buttons.size(), 2);
    buttons[0]->click();
    EXPECT_EQ(wanted.count(), 1);
    buttons[1]->click();
    EXPECT_TRUE(reminder.isHidden());
    wait(14);
    reminder.refresh();
    EXPECT_TRUE(reminder.isHidden());
    wait(1);
    reminder.refresh();
    EXPECT_FALSE(reminder.isHidden());
    m_firing.look(160, "8", 6);
    EXPECT_TRUE(reminder.isHidden()) << "a look is all it asks for";
}

TEST_F(LookReminderTest, StandsAboveTheWritingLine) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    SpreadPage page(m_firing.session(), m_firing.disk().notebook(), m_theme);
    present(page, 1000, 480);
    EXPECT_TRUE(page.findChild<LookReminder*>()->isVisible());
    keepScreens(page, m_theme, QStringLiteral("look-reminder"));
}

} // namespace
} // namespace ringhold::test
