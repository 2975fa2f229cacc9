#include "ui/theme/theme.h"
#include "ui/theme/theme_follower.h"

#include <QApplication>
#include <QEvent>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

class FollowedTheme : public testing::Test {
  protected:
    void makeDesktopDark(bool dark) {
        m_desktop =
            dark ? QPalette(Qt::white, Qt::black, Qt::gray, Qt::darkGray, Qt::gray, Qt::white, Qt::black)
                 : QPalette(Qt::black, Qt::white, Qt::gray, Qt::darkGray, Qt::gray, Qt::black, Qt::white);
        QEvent change(QEvent::ThemeChange);
        QApplication::sendEvent(qApp, &change);
    }

    QPalette m_desktop;
    Theme m_theme;
};

TEST_F(FollowedTheme, IsTheDesktopsByDefault) {
    makeDesktopDark(true);
    const ThemeFollower follower(m_theme, *qApp, [this] { return m_desktop; });
    EXPECT_EQ(m_theme.name(), ThemeName::ember);
    makeDesktopDark(false);
    EXPECT_EQ(m_theme.name(), ThemeName::paper);
    makeDesktopDark(true);
    EXPECT_EQ(m_theme.name(), ThemeName::ember);
}

TEST_F(FollowedTheme, IsTheChosenOneWhateverTheDesktopDoes) {
    makeDesktopDark(false);
    ThemeFollower follower(m_theme, *qApp, [this] { return m_desktop; });
    follower.choose(ThemeChoice::ember);
    EXPECT_EQ(m_theme.name(), ThemeName::ember);
    makeDesktopDark(false);
    EXPECT_EQ(m_theme.name(), ThemeName::ember);
    follower.choose(ThemeChoice::paper);
    makeDesktopDark(true);
    EXPECT_EQ(m_theme.name(), ThemeName::paper);
    follower.choose(ThemeChoice::system);
    EXPECT_EQ(m_theme.name(), ThemeName::ember);
}

TEST_F(FollowedTheme, ReadsTheDesktopsPaletteBehindTheWornOne) {
    const QPalette before = ThemeFollower::systemPalette();
    m_theme.show(ThemeName::ember);
    m_theme.wear(*qApp);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), m_theme.palette().table);
    EXPECT_EQ(isDark(ThemeFollower::systemPalette()), isDark(before));
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), m_theme.palette().table);
}

} // namespace
} // namespace ringhold
