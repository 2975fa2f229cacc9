#include "tests/support/screens.h"
#include "tests/ui/spyhole/climbing_firing.h"
#include "ui/common/choice_row.h"
#include "ui/spyhole/hour_rows.h"
#include "ui/spyhole/spyhole_panel.h"
#include "ui/spyhole/spyhole_view.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

class SpyholePage : public testing::Test {
  protected:
    SpyholePage() : m_model(m_firing.outside()) {
        m_theme.wear(*qApp);
        m_model.setFiring(ClimbingFiring::packs(), ClimbingFiring::looks(), "10");
        m_page = std::make_unique<SpyholePanel>(m_theme, m_model);
        m_page->resize(1100, 620);
        m_page->show();
        QApplication::setActiveWindow(m_page.get());
        m_page->begin();
        QApplication::processEvents();
    }

    ChoiceRow* row(std::size_t cone) const { return m_page->findChild<HourRows*>()->row(cone); }
    SpyholeView* hole() const { return m_page->findChild<SpyholeView*>(); }
    void clickHour(std::size_t cone, double hour) {
        QTest::mouseClick(row(cone)->button(static_cast<int>(hour * 2)), Qt::LeftButton);
    }
    void type(const char* keys) { QTest::keyClicks(QApplication::focusWidget(), QString::fromUtf8(keys)); }
    void press(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }
    bool shows(const QString& words) const {
        const auto labels = m_page->findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [&](const QLabel* label) { return label->isVisible() && label->text().contains(words); });
    }

    ClimbingFiring m_firing;
    Theme m_theme;
    SpyholeModel m_model;
    std::unique_ptr<SpyholePanel> m_page;
};

TEST_F(SpyholePage, WritesALookByKeysAlone) {
    QSignalSpy finished(m_page.get(), &SpyholePanel::finished);
    type("10 3.5");
    EXPECT_TRUE(shows(QStringLiteral("With this look: cone 10 down")));
    EXPECT_TRUE(m_firing.m_written.empty()) << "told before it is written";
    press(Qt::Key_Return);
    ASSERT_EQ(m_firing.m_written.size(), 1u);
    EXPECT_EQ(m_firing.m_written.front().cone, "10");
    EXPECT_DOUBLE_EQ(m_firing.m_written.front().hour, 3.5);
    EXPECT_EQ(finished.count(), 1);
    EXPECT_TRUE(m_page->findChild<QLineEdit*>()->text().isEmpty());
}

TEST_F(SpyholePage, WritesWholeAndHalfHoursByClick) {
    clickHour(0, 4);
    clickHour(1, 0.5);
    clickHour(2, 2.5);
    EXPECT_TRUE(row(2)->button(5)->isChecked());
    const auto buttons = m_page->findChildren<QPushButton*>();
    const auto write = std::ranges::find(buttons, QStringLiteral("Write the looks"), &QPushButton::text);
    ASSERT_NE(write, buttons.end());
    QTest::mouseClick(*write, Qt::LeftButton);
    ASSERT_EQ(m_firing.m_written.size(), 3u);
    EXPECT_DOUBLE_EQ(m_firing.m_written[0].hour, 4);
    EXPECT_DOUBLE_EQ(m_firing.m_written[1].hour, 0.5);
    EXPECT_DOUBLE_EQ(m_firing.m_written[2].hour, 2.5);
}

TEST_F(SpyholePage, IsGoneThroughByKeys) {
    press(Qt::Key_Tab); // from the typing line into the first row
    press(Qt::Key_End);
    press(Qt::Key_Left);
    press(Qt::Key_Down); // the next cone
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    EXPECT_EQ(m_model.entered(0), 5.5);
    EXPECT_EQ(m_model.entered(1), 0.5);
    press(Qt::Key_Up);
    press(Qt::Key_Space); // takes the first back
    EXPECT_EQ(m_model.entered(0), std::nullopt);
    press(Qt::Key_Enter);
    ASSERT_EQ(m_firing.m_written.size(), 1u);
    EXPECT_EQ(m_firing.m_written.front().cone, "10");
}

TEST_F(SpyholePage, TakesAPulledTip) {
    const auto drawing = hole()->drawing();
    const auto from = coneShape(drawing.pack().cones[1].hour, drawing.place(1)).tip;
    const auto to = coneShape(4.5, drawing.place(1)).tip;
    QTest::mousePress(hole(), Qt::LeftButton, {}, from.toPoint());
    QTest::mouseMove(hole(), ((from + to) / 2).toPoint());
    QTest::mouseMove(hole(), to.toPoint());
    QTest::mouseRelease(hole(), Qt::LeftButton, {}, to.toPoint());
    EXPECT_EQ(m_model.entered(1), 4.5);
    EXPECT_EQ(row(1)->current(), 9);
}

TEST_F(SpyholePage, GoesToTheRowOfAClickedCone) {
    const auto drawing = hole()->drawing();
    QTest::mouseClick(hole(), Qt::LeftButton, {}, drawing.nameRect(2).center().toPoint());
    EXPECT_TRUE(row(2)->isAncestorOf(QApplication::focusWidget()));
    EXPECT_EQ(m_model.entered(2), std::nullopt);
}

TEST_F(SpyholePage, TakesTheTimeByClickAndByClock) {
    clickHour(0, 4);
    const auto rows = m_page->findChildren<ChoiceRow*>();
    const auto minutes = std::ranges::find(rows, QStringLiteral("Looked"), &ChoiceRow::accessibleName);
    ASSERT_NE(minutes, rows.end());
    QTest::mouseClick((*minutes)->button(2), Qt::LeftButton);
    EXPECT_EQ(m_model.atWords(), QStringLiteral("17:58"));
    auto* clock = m_page->findChildren<QLineEdit*>().last();
    ASSERT_TRUE(clock->accessibleName().startsWith(QStringLiteral("Looked at")));
    clock->setFocus();
    type("17:51");
    EXPECT_EQ((*minutes)->current(), std::nullopt);
    press(Qt::Key_Return);
    ASSERT_EQ(m_firing.m_written.size(), 1u);
    EXPECT_EQ(m_firing.m_written.front().at, ClimbingFiring::clock("17:51"));
}

TEST_F(SpyholePage, ShowsTheOtherPackMirrored) {
    const auto rows = m_page->findChildren<ChoiceRow*>();
    const auto packs = std::ranges::find(rows, QStringLiteral("Pack"), &ChoiceRow::accessibleName);
    ASSERT_NE(packs, rows.end());
    QTest::mouseClick((*packs)->button(1), Qt::LeftButton);
    EXPECT_TRUE(hole()->drawing().pack().leansLeft);
    EXPECT_EQ(m_page->findChild<HourRows*>()->count(), 2u);
    clickHour(0, 3);
    EXPECT_EQ(m_model.looks().front().cone, "8");
}

TEST_F(SpyholePage, TellsWhatIsWrongInsteadOfWriting) {
    press(Qt::Key_Return);
    EXPECT_TRUE(shows(QStringLiteral("No cone has an hour yet.")));
    type("10 9");
    press(Qt::Key_Return);
    EXPECT_TRUE(shows(QStringLiteral("an hour is 0 (standing) to 6 (down)")));
    EXPECT_TRUE(m_firing.m_written.empty());
}

TEST_F(SpyholePage, KeepsTheLookWhenTheDiskIsFull) {
    m_firing.m_roomOnDisk = 0;
    type("10 3");
    press(Qt::Key_Return);
    EXPECT_TRUE(shows(QStringLiteral("the disk is full")));
    EXPECT_EQ(m_model.entered(1), 3);
}

TEST_F(SpyholePage, WarnsOfADoubtfulLookWithoutRefusing) {
    clickHour(2, 5);
    EXPECT_TRUE(shows(QStringLiteral("does not fit")));
    press(Qt::Key_Return);
    EXPECT_EQ(m_firing.m_written.size(), 1u);
}

TEST_F(SpyholePage, CautionsTheEyes) {
    EXPECT_TRUE(shows(QStringLiteral("Infrared-rated eyewear, chosen with its supplier and to local rules")));
}

TEST_F(SpyholePage, IsLeftByEscapeWithNothingWritten) {
    QSignalSpy finished(m_page.get(), &SpyholePanel::finished);
    type("10 3");
    press(Qt::Key_Escape);
    EXPECT_EQ(finished.count(), 1);
    EXPECT_TRUE(m_firing.m_written.empty());
    EXPECT_TRUE(m_model.looks().empty());
    EXPECT_FALSE(m_page->isModal());
}

TEST_F(SpyholePage, NamesEveryControl) {
    int controls = 0;
    for (const auto* child : m_page->findChildren<QWidget*>()) {
        if (child->focusPolicy() == Qt::NoFocus)
            continue;
        ++controls;
        const auto* button = qobject_cast<const QAbstractButton*>(child);
        EXPECT_FALSE(child->accessibleName().isEmpty() && !(button && !button->text().isEmpty()))
            << child->metaObject()->className();
    }
    EXPECT_GT(controls, 40);
}

TEST_F(SpyholePage, GoesRoundByTheTabKey) {
    clickHour(0, 1);
    m_page->begin();
    QStringList stops;
    for (int i = 0; i < 9; ++i) {
        const auto* at = QApplication::focusWidget();
        const auto* button = qobject_cast<const QAbstractButton*>(at);
        stops += button && at->accessibleName().isEmpty() ? button->text() : at->accessibleName();
        press(Qt::Key_Tab);
    }
    EXPECT_EQ(stops, (QStringList{
                         QStringLiteral("Type a look: cone, space, hour"), QStringLiteral("9 at 1 o’clock"),
                         QStringLiteral("10 standing"), QStringLiteral("11 standing"), QStringLiteral("now"),
                         QStringLiteral("Looked at what time of day"), QStringLiteral("Write the look"),
                         QStringLiteral("Leave it"), QStringLiteral("Pack: middle shelf")}));
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), stops.first());
}

TEST_F(SpyholePage, FitsASmallWindowAndLargeText) {
    EXPECT_LE(m_page->minimumSizeHint().width(), 960);
    EXPECT_LE(m_page->minimumSizeHint().height(), 520);
    clickHour(0, 4);
    clickHour(1, 0.5);
    clickHour(2, 0);
    m_page->resize(1160, 640);
    keepScreens(*m_page, m_theme, QStringLiteral("spyhole"));
    clickHour(2, 5);
    m_model.setCurrentPack(1);
    m_page->resize(960, 520);
    keepScreens(*m_page, m_theme, QStringLiteral("spyhole-small"));
    m_theme.setTextScale(1.5);
    QApplication::processEvents();
    EXPECT_LE(m_page->minimumSizeHint().width(), 1200);
    m_page->resize(m_page->minimumSizeHint().width(), 620);
    keepScreens(*m_page, m_theme, QStringLiteral("spyhole-large-text"));
}

} // namespace
} // namespace ringhold
