#include "tests/support/live_climb.h"
#include "tests/support/screens.h"
#include "ui/spread/advice_model.h"
#include "ui/spread/advice_panel.h"
#include "ui/spread/spread_page.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>

namespace ringhold::test {
namespace {

class AdviceTest : public testing::Test {
  protected:
    AdviceTest() { m_firing.look(130, "8", 1); }
    /// A button pressed by its key is seen to go down for a moment.
    static void unfold(AdvicePanel& panel) {
        if (!panel.isVisible())
            press(Qt::Key_A, Qt::AltModifier);
        ASSERT_TRUE(QTest::qWaitFor([&] { return panel.isVisible(); }, 2000));
    }

    LiveClimb m_firing{140};
    Theme m_theme;
};

TEST_F(AdviceTest, AnswersWithWhatSuitsTheFiring) {
    AdviceModel model(m_firing.session(), m_firing.preferences());
    model.refresh();
    EXPECT_EQ(model.holdText(), QStringLiteral("1290")); // the set point that the plan waits at
    EXPECT_EQ(model.moreText(), QStringLiteral("15 min"));
    EXPECT_TRUE(model.byText().startsWith(QStringLiteral("14:"))) << model.byText().toStdString();
    EXPECT_TRUE(model.holdAnswer().startsWith(QStringLiteral("Cone 9 is down in ")))
        << model.holdAnswer().toStdString();
    EXPECT_TRUE(model.byAnswer().startsWith(QStringLiteral("Climb at "))) << model.byAnswer().toStdString();
    EXPECT_TRUE(model.moreAnswer().startsWith(QStringLiteral("Cone 10 would ")))
        << model.moreAnswer().toStdString();
    EXPECT_FALSE(model.dropAnswer().isEmpty());
    EXPECT_TRUE(model.modelFit().contains(QStringLiteral("for cones 8, 9 and 10")));
}

TEST_F(AdviceTest, TakesTargetsAndRefusesWhatIsNone) {
    AdviceModel model(m_firing.session(), m_firing.preferences());
    EXPECT_TRUE(model.setHold(QStringLiteral("1100")));
    EXPECT_TRUE(model.holdAnswer().contains(QStringLiteral("not down within a day")))
        << model.holdAnswer().toStdString();
    EXPECT_FALSE(model.setHold(QStringLiteral("warm")));
    EXPECT_EQ(model.holdText(), QStringLiteral("1100"));
    EXPECT_TRUE(model.setBy(QStringLiteral("14:22")));
    EXPECT_EQ(model.byText(), QStringLiteral("14:22"));
    EXPECT_TRUE(model.byAnswer().startsWith(QStringLiteral("No climb up to ")))
        << model.byAnswer().toStdString();
    EXPECT_FALSE(model.setBy(QStringLiteral("soon")));
    EXPECT_TRUE(model.setMore(QStringLiteral("1 h")));
    EXPECT_FALSE(model.setMore(QStringLiteral("-3")));
    EXPECT_TRUE(model.setHold({})) << "back to what suits the firing";
    EXPECT_EQ(model.holdText(), QStringLiteral("1290"));
}

TEST_F(AdviceTest, UnfoldsAndFoldsByKeyboard) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    SpreadPage page(m_firing.session(), m_firing.disk().notebook(), m_theme);
    present(page, 1000, 480);
    auto& panel = *page.findChild<AdvicePanel*>();
    EXPECT_FALSE(panel.isVisible());
    unfold(panel);
    const auto fields = panel.findChildren<QLineEdit*>();
    ASSERT_EQ(fields.size(), 3);
    EXPECT_TRUE(fields[0]->hasFocus());
    EXPECT_EQ(fields[0]->text(), QStringLiteral("1290"));
    type(QStringLiteral("1100"));
    press(Qt::Key_Return);
    EXPECT_TRUE(panel.model().holdAnswer().contains(QStringLiteral("not down within a day")));
    press(Qt::Key_Escape);
    EXPECT_FALSE(panel.isVisible());
}

TEST_F(AdviceTest, HasItsPlaceInTheSmallestWindow) {
    m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    MainWindow window(m_firing.disk().notebook(), m_theme);
    for (const auto& [width, height] : {std::pair{1024, 640}, std::pair{1280, 800}}) {
        present(window, width, height);
        auto& panel = *window.findChild<AdvicePanel*>();
        unfold(panel);
        QApplication::processEvents();
        EXPECT_LE(window.height(), height) << "it does not press the window apart";
        EXPECT_LE(panel.mapTo(&window, QPoint(0, panel.height())).y(), height);
        keepScreens(window, m_theme, QStringLiteral("advice-%1").arg(width));
    }
}

} // namespace
} // namespace ringhold::test
