#include "tests/support/notebook_on_disk.h"
#include "tests/support/photos.h"
#include "tests/support/screens.h"
#include "ui/ware/measure_window.h"
#include "ui/ware/photo_view.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

namespace ringhold::test {
namespace {

class MeasureWindowTest : public testing::Test {
  protected:
    MeasureWindowTest() { present(m_window, 960, 700); }
    PhotoView& view() { return m_window.view(); }
    void click(QPointF onPhoto) {
        QTest::mouseClick(&view(), Qt::LeftButton, {}, view().toScreen(onPhoto).toPoint());
    }
    void clickAll() {
        for (const QPointF place : {QPointF(600, 600), {1000, 600}, {800, 658}, {800, 822}})
            click(place);
    }
    QPushButton* button(const QString& words) {
        for (auto* found : m_window.findChildren<QPushButton*>())
            if (found->text().remove(u'&').contains(words))
                return found;
        ADD_FAILURE() << "no button " << words.toStdString();
        return nullptr;
    }
    bool says(const QString& words) {
        const auto labels = m_window.findChildren<QLabel*>();
        return std::ranges::any_of(labels, [&](const QLabel* l) { return l->text().contains(words); });
    }

    Theme m_theme;
    MeasureWindow m_window{m_theme, QStringLiteral("tall vase"), paintedPhoto(1600, 1200, true)};
    QSignalSpy m_measured{&m_window, &MeasureWindow::measured};
};

} // namespace

TEST_F(MeasureWindowTest, FourClicksAndALengthMeasureACrystal) {
    EXPECT_TRUE(says(u"1 of 4"_qs));
    EXPECT_FALSE(button(u"Keep"_qs)->isEnabled());
    clickAll();
    auto* known = m_window.findChild<QLineEdit*>();
    known->setFocus();
    known->selectAll();
    type(u"100"_qs);
    ASSERT_TRUE(m_window.length());
    EXPECT_NEAR(m_window.length()->size_mm, 41, 2 * m_window.length()->sd_mm);
    EXPECT_TRUE(says(u" mm ±"_qs));
    QTest::mouseClick(button(u"Keep"_qs), Qt::LeftButton);
    ASSERT_EQ(m_measured.count(), 1);
    EXPECT_FALSE(m_window.isVisible());
}

TEST_F(MeasureWindowTest, KeysDoTheSame) {
    view().setFocus();
    const QPointF middle = view().cross();
    EXPECT_EQ(middle, QPointF(800, 600));
    press(Qt::Key_Plus);
    press(Qt::Key_Plus);
    for (int i = 0; i < 20; ++i)
        press(Qt::Key_Left, Qt::ShiftModifier);
    press(Qt::Key_Return);
    for (int i = 0; i < 40; ++i)
        press(Qt::Key_Right, Qt::ShiftModifier);
    press(Qt::Key_Space);
    const auto known = view().marks().known();
    ASSERT_TRUE(known);
    EXPECT_NEAR(known->dy(), 0, 1e-9);
    press(Qt::Key_Down);
    EXPECT_GT(view().cross().y(), middle.y());
    press(Qt::Key_Enter);
    press(Qt::Key_Backspace);
    EXPECT_EQ(view().marks().count(), 2);
    EXPECT_TRUE(says(u"3 of 4"_qs));
    press(Qt::Key_Home);
    const QPointF shown = view().toScreen({1600, 1200}) - view().toScreen({0, 0});
    EXPECT_NEAR(std::max(shown.x() / view().width(), shown.y() / view().height()), 1, 0.1);
}

TEST_F(MeasureWindowTest, AMarkIsDraggedWhereItBelongs) {
    clickAll();
    const QPoint from = view().toScreen({800, 822}).toPoint();
    const QPoint to = view().toScreen({800, 900}).toPoint();
    QTest::mousePress(&view(), Qt::LeftButton, {}, from);
    QTest::mouseMove(&view(), to);
    QTest::mouseRelease(&view(), Qt::LeftButton, {}, to);
    EXPECT_EQ(view().marks().count(), 4);
    EXPECT_NEAR(view().marks().at(PhotoMark::crystalTo)->y(), 900, 2);
}

TEST_F(MeasureWindowTest, NearerInMarksAreBetter) {
    const double before = view().markError_px();
    view().setFocus();
    for (int i = 0; i < 12; ++i)
        press(Qt::Key_Plus);
    EXPECT_LT(view().markError_px(), before);
    EXPECT_DOUBLE_EQ(view().markError_px(), 1) << "never better than a pixel of the picture";
}

TEST_F(MeasureWindowTest, WhatGivesNoSizeIsSaid) {
    clickAll();
    auto* known = m_window.findChild<QLineEdit*>();
    known->setText(u"ten"_qs);
    EXPECT_TRUE(says(u"is a number of mm"_qs));
    EXPECT_FALSE(button(u"Keep"_qs)->isEnabled());
    known->setText(u"10,5"_qs);
    EXPECT_TRUE(button(u"Keep"_qs)->isEnabled());
}

TEST_F(MeasureWindowTest, IsUsableByKeyboard) {
    clickAll();
    expectUsableByKeyboard(m_window);
}

TEST_F(MeasureWindowTest, IsPictured) {
    clickAll();
    m_window.findChild<QLineEdit*>()->setText(u"100"_qs);
    keepScreens(m_window, m_theme, u"measure"_qs);
}

TEST(LengthWords, SayNoMoreThanTheErrorAllows) {
    EXPECT_EQ(lengthWords({41.27, 0.31}), u"41.3 mm ± 0.6"_qs);
    EXPECT_EQ(lengthWords({41.27, 1.2}), u"41 mm ± 2"_qs);
    EXPECT_EQ(lengthWords({41.27, 0.01}), u"41.3 mm ± 0.1"_qs);
}

} // namespace ringhold::test
