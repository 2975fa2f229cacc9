// Rings and sags of a piece: how they are typed, answered, kept and taken back.
#include "core/book/glaze_evidence.h"
#include "core/book/ware_finds.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "tests/support/photos.h"
#include "tests/support/screens.h"
#include "ui/common/choice_row.h"
#include "ui/ware/finds_pane.h"
#include "ui/ware/measure_window.h"
#include "ui/ware/photo_bar.h"
#include "ui/ware/photo_view.h"
#include "ui/ware/ring_words.h"
#include "ui/ware/ware_page.h"
#include "ui/ware/ware_table.h"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>

namespace ringhold::test {
namespace {

Plan ringPlan() {
    const auto C = Temperature::fromCelsius;
    return {"one ring",
            {Climb{C(1270), Rate::fromCelsiusPerHour(60)}, Drop{C(1080), {}},
             Hold{C(1080), std::chrono::minutes(180), TemperatureDifference::fromCelsius(5)},
             Rings{1, C(1040), std::chrono::minutes(14), C(1080), std::chrono::minutes(14)},
             Cool{C(700), {}}}};
}

/// The fixture's firing with a sag of 14 °C an hour into its growth hold.
Curve saggingCurve(Instant began) {
    Curve curve = crystalCurve(began);
    for (auto& point : curve) {
        const double off = std::abs(inMinutes(point.at - began) - 750);
        if (off < 10)
            point.temperature = point.temperature - TemperatureDifference::fromCelsius(14 * (1 - off / 10));
    }
    return curve;
}

class FindsTest : public testing::Test {
  protected:
    FindsTest() {
        present(m_page);
        m_page.showFiring(m_firing);
        m_page.showSheet(WarePage::Sheet::outcome);
        goTo(0);
    }
    FindsPane& pane() { return *m_page.findChild<FindsPane*>(); }
    void goTo(int row) {
        auto& table = *m_page.findChild<WareTable*>();
        table.setCurrentIndex(table.model()->index(row, int(WareColumn::crystals)));
    }
    std::vector<RingRadius> rings(PieceId piece) { return good(WareFinds(m_book->book()).rings(piece)); }
    std::vector<SagSeen> sags(PieceId piece) { return good(WareFinds(m_book->book()).sags(piece)); }
    void typeRings(const QString& text) {
        pane().rings().setFocus();
        pane().rings().selectAll();
        type(text);
        press(Qt::Key_Return);
    }
    QString warnings() { return warningsOn(m_page); }
    void undo() {
        for (auto* button : m_page.findChildren<QPushButton*>())
            if (button->text().remove(u'&') == u"Undo"_qs)
                button->click();
    }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_kiln = m_book.addKiln("Heron");
    FiringId m_firing = m_book.addFiring(
        m_kiln, {.began = noonOfMarch(1), .plan = ringPlan(), .curve = saggingCurve(noonOfMarch(1))});
    PieceId m_vase = m_book.addPiece(m_firing, "tall vase", "ice 3");
    PieceId m_bowl = m_book.addPiece(m_firing, "bowl", "ice 3");
    WarePage m_page{m_book.notebook(), m_theme};
};

} // namespace

TEST(RingWords, RadiiAreTypedWithSpacesAndDashes) {
    const auto rings = good(ringsTyped(u"4,2 –  8.1; 9"_qs, {}));
    ASSERT_EQ(rings.size(), 3U);
    EXPECT_DOUBLE_EQ(rings[0].radius_mm, 4.2);
    EXPECT_EQ(rings[1].ring, 2) << "the second cannot be seen";
    EXPECT_DOUBLE_EQ(rings[2].radius_mm, 9);
    EXPECT_GT(rings[2].sd_mm, 0);
    EXPECT_EQ(ringsText(rings), u"4.2  –  8.1  9"_qs);
    EXPECT_TRUE(good(ringsTyped(u"  "_qs, rings)).empty());
}

TEST(RingWords, WhatIsNoRadiusIsRefused) {
    for (const auto* text : {u"4 x", u"0", u"-3", u"8 4", u"4 4", u"900", u"nan"})
        EXPECT_FALSE(ringsTyped(QString::fromUtf16(text), {})) << QString::fromUtf16(text).toStdString();
}

TEST(RingWords, ARadiusThatStaysKeepsItsError) {
    const std::vector<RingRadius> before{{PieceId{1}, 0, 4.2, 0.07}, {PieceId{1}, 1, 8, 0.09}};
    const auto rings = good(ringsTyped(u"4.2 8.5"_qs, before));
    EXPECT_DOUBLE_EQ(rings[0].sd_mm, 0.07);
    EXPECT_NE(rings[1].sd_mm, 0.09);
}

TEST_F(FindsTest, RingsAreTypedAndTakenBack) {
    typeRings(u"6.4"_qs);
    ASSERT_EQ(rings(m_vase).size(), 1U);
    EXPECT_DOUBLE_EQ(rings(m_vase)[0].radius_mm, 6.4);
    goTo(1);
    EXPECT_TRUE(pane().rings().text().isEmpty());
    goTo(0);
    EXPECT_EQ(pane().rings().text(), u"6.4"_qs);
    typeRings(u"huge"_qs);
    EXPECT_TRUE(warnings().contains(u"number of mm")) << warnings().toStdString();
    EXPECT_EQ(rings(m_vase).size(), 1U);
    goTo(1);
    undo();
    EXPECT_TRUE(rings(m_vase).empty()) << "whatever piece is shown meanwhile";
}

TEST_F(FindsTest, TheSagIsAskedForWithItsPlaceInTheCrystal) {
    ASSERT_EQ(pane().questions(), 1);
    const QString asked = pane().answer(0).accessibleDescription();
    EXPECT_TRUE(asked.contains(u"sag of 13") || asked.contains(u"sag of 14")) << asked.toStdString();
    EXPECT_TRUE(asked.contains(u"mm out (")) << "with the range of the growth rate";
    QTest::mouseClick(pane().answer(0).button(1), Qt::LeftButton);
    ASSERT_EQ(sags(m_vase).size(), 1U);
    EXPECT_EQ(sags(m_vase)[0].seen, SagSight::no);
    EXPECT_GT(sags(m_vase)[0].radius_mm.value_or(0), 1);
    pane().answer(0).button(1)->setFocus();
    press(Qt::Key_Left);
    EXPECT_EQ(sags(m_vase)[0].seen, SagSight::yes);
    EXPECT_TRUE(sags(m_bowl).empty());
    goTo(1);
    EXPECT_FALSE(pane().answer(0).current()) << "each piece has its own answer";
    undo();
    undo();
    EXPECT_TRUE(sags(m_vase).empty());
}

TEST_F(FindsTest, AnswersTeachTheBandOfTheGlaze) {
    QTest::mouseClick(pane().answer(0).button(0), Qt::LeftButton);
    goTo(1);
    QTest::mouseClick(pane().answer(0).button(0), Qt::LeftButton);
    typeRings(u"6.4"_qs);
    GlazeEvidence evidence(m_book->book());
    const auto known = good(evidence.of("ICE 3"));
    EXPECT_EQ(known.visible.answers, 2);
    EXPECT_LT(known.visible.likely_C, 14);
    EXPECT_EQ(known.growth.pieces, 1);
    EXPECT_EQ(known.growth.rings, 1);
    EXPECT_EQ(good(evidence.of("lichen")).visible.answers, 0);
    const auto own = good(evidence.of("lichen")).growth.rate();
    EXPECT_EQ(own.basis, GrowthBasis::published);
}

TEST_F(FindsTest, ARingIsMeasuredOnThePhotoAcross) {
    const QTemporaryDir folder;
    QFile file(folder.filePath(u"vase.jpg"_qs));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(photoJpeg(paintedPhoto(1600, 1200, true)));
    file.close();
    auto& bar = *m_page.findChild<PhotoBar*>();
    bar.addFiles({file.fileName()});
    MeasureWindow* window = bar.measure();
    ASSERT_TRUE(window);
    window->resize(900, 700);
    for (const QPointF place : {QPointF(600, 600), {1000, 600}, {800, 658}, {800, 822}})
        QTest::mouseClick(&window->view(), Qt::LeftButton, {}, window->view().toScreen(place).toPoint());
    window->findChild<QLineEdit*>()->setText(u"100"_qs);
    window->findChild<QComboBox*>()->setCurrentIndex(1);
    window->findChildren<QPushButton*>().last()->click();
    ASSERT_EQ(rings(m_vase).size(), 1U);
    EXPECT_NEAR(rings(m_vase)[0].radius_mm, 20.5, 1) << "half of what it is across";
    EXPECT_GT(rings(m_vase)[0].sd_mm, 0);
    EXPECT_FALSE(m_book->reader().outcomes(m_firing)->size()) << "no whole crystal was measured";
    EXPECT_TRUE(bar.model().index(0).data().toString().contains(u"ring 1"));
}

TEST_F(FindsTest, IsUsableByKeyboardAndPictured) {
    typeRings(u"6.4"_qs);
    expectUsableByKeyboard(m_page);
    keepScreens(m_page, m_theme, QStringLiteral("finds"));
}

} // namespace ringhold::test
