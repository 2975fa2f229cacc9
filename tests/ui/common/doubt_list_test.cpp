#include "tests/support/live_climb.h"
#include "tests/support/screens.h"
#include "ui/common/doubt_list.h"
#include "ui/spread/spread_page.h"
#include "ui/spyhole/spyhole_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QLabel>
#include <QPushButton>

namespace ringhold::test {
namespace {

class DoubtListTest : public testing::Test {
  protected:
    DoubtListTest() {
        m_firing.look(130, "8", 1);
        m_wrong = m_firing.look(132, "10", 5);
        m_firing.look(138, "8", 2);
        m_firing.look(148, "8", 4);
    }
    const Look& wrong() { return *std::ranges::find(m_firing.session().record().looks, m_wrong, &Look::id); }

    LiveClimb m_firing;
    Theme m_theme;
    LookId m_wrong{};
};

TEST_F(DoubtListTest, TellsTheDoubtAndStrikesTheLookByKeyboard) {
    DoubtList list(m_firing.session(), m_firing.preferences());
    present(list, 700, 80);
    ASSERT_EQ(list.findChildren<QPushButton*>().size(), 1);
    auto* strike = list.findChild<QPushButton*>();
    EXPECT_TRUE(list.findChild<QLabel*>()->text().startsWith(QStringLiteral("Look 14:12, 10 at 5")));
    strike->setFocus();
    Q_EMIT m_firing.session().forecastChanged();
    EXPECT_TRUE(strike->hasFocus()) << "a new forecast leaves the keyboard where it is";
    EXPECT_FALSE(wrong().struck);
    press(Qt::Key_Space);
    EXPECT_TRUE(wrong().struck);
    EXPECT_FALSE(list.isVisible());
    ASSERT_TRUE(m_firing.session().firing().restore(m_wrong, LiveClimb::at(151)).ok());
    EXPECT_TRUE(list.isVisible()) << "never dropped for good";
}

TEST_F(DoubtListTest, StandsOnTheSpyholesPage) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    SpyholePage page(m_firing.session(), m_firing.preferences(), m_theme);
    present(page, 1160, 600);
    ASSERT_TRUE(page.findChild<DoubtList*>());
    EXPECT_TRUE(page.findChild<DoubtList*>()->isVisible());
    keepScreens(page, m_theme, QStringLiteral("doubt-spyhole"));
}

TEST_F(DoubtListTest, IsSeenOnTheSpread) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    SpreadPage page(m_firing.session(), m_firing.disk().notebook(), m_theme);
    present(page, 1000, 480);
    keepScreens(page, m_theme, QStringLiteral("doubt-spread"));
    QStringList labels;
    for (const auto* label : page.findChildren<QLabel*>())
        if (label->isVisible())
            labels << label->text();
    EXPECT_TRUE(labels.contains(QStringLiteral("Look 14:12, 10 at 5 o’clock, does not fit the rest.")));
}

} // namespace
} // namespace ringhold::test
