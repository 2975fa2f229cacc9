#include "tests/support/live_climb.h"
#include "tests/support/ring_firing.h"
#include "tests/support/screens.h"
#include "ui/spread/card_words.h"
#include "ui/spread/heat_card.h"
#include "ui/spread/ring_words.h"
#include "ui/spread/strip.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QLabel>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

TEST(RingWords, CountADwellDownAndSayWhatComes) {
    RingFiring firing(147);
    const auto clock = ringClockOf(firing.session());
    ASSERT_TRUE(clock);
    EXPECT_EQ(clock->ring, 1);
    EXPECT_TRUE(clock->atLow);
    ASSERT_TRUE(clock->dwelling());
    const auto before = stripWords(firing.session(), firing.preferences());
    EXPECT_EQ(before.step, QStringLiteral("ring 1 of 2, low"));
    EXPECT_TRUE(before.stepLeft.endsWith(QStringLiteral(" left"))) << before.stepLeft.toStdString();
    firing.wait(std::chrono::seconds(30));
    const auto later = ringClockOf(firing.session());
    EXPECT_EQ(clock->left - later->left, std::chrono::seconds(30));
    EXPECT_NE(stripWords(firing.session(), firing.preferences()).stepLeft, before.stepLeft);
    EXPECT_NEAR(inMinutes(clock->left), 5, 1.1);

    const auto card = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(card.title, QStringLiteral("Ring 1 of 2, low"));
    EXPECT_EQ(plainWords(card.lines.value(0)), "Dwell at 1 036 °C.");
    EXPECT_TRUE(card.lines.value(1).startsWith(QStringLiteral("Then up, about 14:3")))
        << card.lines.value(1).toStdString();
}

TEST(RingWords, CueTheMoveBeforeTheDwellEndsAndTellWhenItIsOverdue) {
    RingFiring firing(147);
    const auto left = std::chrono::floor<std::chrono::seconds>(ringClockOf(firing.session())->left);
    firing.wait(left - std::chrono::seconds(48));
    ASSERT_TRUE(ringClockOf(firing.session())->cue);
    EXPECT_TRUE(ringLeftWords(*ringClockOf(firing.session())).endsWith(QStringLiteral(", then up")));
    firing.wait(std::chrono::seconds(48 + 70));
    const auto over = ringLeftWords(*ringClockOf(firing.session()));
    EXPECT_TRUE(over.startsWith(QStringLiteral("over by 1:"))) << over.toStdString();
}

TEST(RingWords, TellTheLastDwell) {
    RingFiring firing(200);
    const auto clock = ringClockOf(firing.session());
    ASSERT_TRUE(clock);
    EXPECT_EQ(clock->ring, 2);
    EXPECT_FALSE(clock->atLow);
    EXPECT_TRUE(ringNextWords(*clock, firing.preferences()).contains(QStringLiteral("the rings are done")));
}

TEST(RingWords, Countdown) {
    EXPECT_EQ(countdown(std::chrono::seconds(522)), QStringLiteral("8:42"));
    EXPECT_EQ(countdown(std::chrono::seconds(-70)), QStringLiteral("1:10"));
    EXPECT_EQ(countdown(std::chrono::seconds(3725)), QStringLiteral("1:02:05"));
    EXPECT_EQ(countdown(std::chrono::milliseconds(59700)), QStringLiteral("1:00"));
}

TEST(RingWords, AreOnCardAndStrip) {
    RingFiring firing(147);
    Theme theme;
    theme.wear(*static_cast<QApplication*>(QApplication::instance()));
    Strip strip(firing.session(), firing.preferences(), theme);
    present(strip, 1280, 84);
    keepScreens(strip, theme, QStringLiteral("ring-strip"));
    HeatCard card(firing.session(), firing.preferences(), theme);
    present(card, 420, 170);
    keepScreens(card, theme, QStringLiteral("ring-card"));
    const auto shown = [&] {
        QStringList words;
        for (const auto* label : card.findChildren<QLabel*>())
            words << label->text();
        return words.join(QLatin1Char('\n'));
    };
    EXPECT_TRUE(shown().contains(QStringLiteral("Ring 1 of 2"))) << shown().toStdString();
    const QString before = shown();
    firing.wait(std::chrono::seconds(20));
    card.refresh();
    EXPECT_NE(shown(), before);
}

} // namespace
} // namespace ringhold::test
