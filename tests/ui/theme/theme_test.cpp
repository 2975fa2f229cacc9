#include "ui/theme/icons.h"
#include "ui/theme/theme.h"

#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QIcon>
#include <QImage>
#include <QPixmap>
#include <QSignalSpy>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(ThemeFonts, AreVollkornAndLato) {
    const Theme theme;
    EXPECT_EQ(QFontInfo(theme.text(TextSize::body)).family(), QStringLiteral("Lato"));
    EXPECT_EQ(QFontInfo(theme.heading(TextSize::title, QStringLiteral("Middle shelf"))).family(),
              QStringLiteral("Vollkorn"));
    EXPECT_EQ(QFontInfo(theme.heading(TextSize::title, QStringLiteral("Firing 23"))).family(),
              QStringLiteral("Lato"));
}

TEST(ThemeFonts, HaveTabularFigures) {
    const QFontMetricsF metrics(Theme().text(TextSize::large));
    const double width = metrics.horizontalAdvance(QLatin1Char('0'));
    for (char figure = '1'; figure <= '9'; ++figure)
        EXPECT_DOUBLE_EQ(metrics.horizontalAdvance(QLatin1Char(figure)), width) << figure;
}

TEST(ThemeFonts, NameAFallbackForASystemWithoutThem) {
    const Theme theme;
    EXPECT_GE(theme.text(TextSize::body).families().size(), 2);
    EXPECT_EQ(theme.text(TextSize::body).styleHint(), QFont::SansSerif);
    EXPECT_EQ(theme.heading(TextSize::body, QString()).styleHint(), QFont::Serif);
}

TEST(ThemeScale, ScalesEveryTextAndStaysInItsRange) {
    Theme theme;
    QSignalSpy changes(&theme, &Theme::changed);
    const double body = theme.text(TextSize::body).pointSizeF();
    theme.setTextScale(1.5);
    EXPECT_DOUBLE_EQ(theme.text(TextSize::body).pointSizeF(), 1.5 * body);
    EXPECT_TRUE(theme.styleSheet().contains(QStringLiteral("font-size: 14.25pt")));
    theme.setTextScale(9);
    EXPECT_DOUBLE_EQ(theme.textScale(), Theme::largestScale);
    theme.setTextScale(9);
    EXPECT_EQ(changes.count(), 2);
}

TEST(ThemeSheet, LeavesNoWordUnfilled) {
    Theme theme;
    for (const auto name : {ThemeName::paper, ThemeName::ember}) {
        theme.show(name);
        EXPECT_FALSE(theme.styleSheet().isEmpty());
        EXPECT_FALSE(theme.styleSheet().contains(u'@')) << qPrintable(theme.styleSheet());
        EXPECT_TRUE(theme.styleSheet().contains(theme.palette().band.name()));
    }
}

TEST(ThemePalette, IsDarkWhereTheThemeIs) {
    Theme theme;
    EXPECT_FALSE(isDark(theme.widgetPalette()));
    theme.show(ThemeName::ember);
    EXPECT_TRUE(isDark(theme.widgetPalette()));
    EXPECT_EQ(theme.widgetPalette().color(QPalette::Base), theme.palette().page);
    EXPECT_EQ(theme.widgetPalette().color(QPalette::Window), theme.palette().table);
}

bool hasInk(const QIcon& drawn, const QColor& ink) {
    const QImage image = drawn.pixmap(QSize(48, 48)).toImage();
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixelColor(x, y) == ink)
                return true;
    return false;
}

TEST(Icons, AreDrawnInTheInkOfTheTheme) {
    Theme theme;
    EXPECT_GE(iconNames().size(), 10);
    for (const auto& name : iconNames()) {
        theme.show(ThemeName::paper);
        const QIcon drawn = icon(theme, name);
        EXPECT_TRUE(hasInk(drawn, theme.palette().ink)) << qPrintable(name);
        theme.show(ThemeName::ember);
        EXPECT_TRUE(hasInk(drawn, theme.palette().ink)) << qPrintable(name);
    }
    EXPECT_TRUE(icon(theme, QStringLiteral("unicorn")).isNull());
}

} // namespace
} // namespace ringhold
