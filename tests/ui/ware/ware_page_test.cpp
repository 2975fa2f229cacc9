#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "tests/support/photos.h"
#include "tests/support/screens.h"
#include "ui/theme/theme.h"
#include "ui/ware/last_load.h"
#include "ui/ware/measure_window.h"
#include "ui/ware/photo_bar.h"
#include "ui/ware/photo_view.h"
#include "ui/ware/shelf_map_pane.h"
#include "ui/ware/shelf_map_view.h"
#include "ui/ware/ware_page.h"
#include "ui/ware/ware_table.h"

#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

namespace ringhold::test {
namespace {

class WarePageTest : public testing::Test {
  protected:
    WareTable& table() { return *m_page.findChild<WareTable*>(); }
    QComboBox& firings() { return *m_page.findChild<QComboBox*>(); }
    void start() {
        present(m_page);
        table().setFocus();
    }
    void goTo(int row, WareColumn column) {
        table().setCurrentIndex(table().model()->index(row, static_cast<int>(column)));
    }
    std::pair<int, WareColumn> place() {
        return {table().currentIndex().row(), static_cast<WareColumn>(table().currentIndex().column())};
    }
    QPushButton* button(const QString& words) {
        for (auto* found : m_page.findChildren<QPushButton*>())
            if (found->text().remove(u'&').contains(words))
                return found;
        ADD_FAILURE() << "no button " << words.toStdString();
        return nullptr;
    }
    void click(const QString& words) { QTest::mouseClick(button(words), Qt::LeftButton); }
    QString warnings() { return warningsOn(m_page); }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_kiln = m_book.addKiln("Heron");
    FiringId m_firing = m_book.addFiring(m_kiln, {.title = "Frost fern", .began = noonOfMarch(1)});
    WarePage m_page{m_book.notebook(), m_theme};
};

using Place = std::pair<int, WareColumn>;

} // namespace

TEST_F(WarePageTest, ALoadIsTypedWithEnterAlone) {
    start();
    m_page.showSheet(WarePage::Sheet::load);
    EXPECT_EQ(place(), Place(0, WareColumn::piece));
    type(u"tall vase"_qs);
    press(Qt::Key_Return);
    EXPECT_EQ(place(), Place(0, WareColumn::form));
    press(Qt::Key_Return);
    press(Qt::Key_Return); // no clay
    EXPECT_EQ(place(), Place(0, WareColumn::glaze));
    type(u"ice 3"_qs);
    press(Qt::Key_Return);
    type(u"24/200"_qs);
    press(Qt::Key_Return);
    type(u"top"_qs);
    press(Qt::Key_Return);
    EXPECT_EQ(place(), Place(0, WareColumn::catcher));
    type(u"y"_qs);
    EXPECT_EQ(place(), Place(0, WareColumn::sagger));
    press(Qt::Key_Return);
    EXPECT_EQ(place(), Place(1, WareColumn::piece));
    type(u"bowl"_qs);
    press(Qt::Key_Return);
    const auto pieces = m_book.pieces(m_firing);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_EQ(pieces[0].glaze, "ice 3");
    EXPECT_EQ(pieces[0].shelf, "top");
    EXPECT_TRUE(pieces[0].catcher);
    EXPECT_FALSE(pieces[0].sagger);
    EXPECT_EQ(pieces[1].name, "bowl");
}

TEST_F(WarePageTest, AFiringThatBeginsIsShownWithItsPieces) {
    start();
    NewFiring firing;
    firing.kiln = m_kiln;
    firing.title = u"Lichen"_qs;
    Piece piece;
    piece.name = "lidded jar";
    firing.pieces = {piece};
    const auto session = m_book->begin(firing);
    ASSERT_TRUE(session) << session.error().text();
    EXPECT_EQ(firings().currentData().toLongLong(), static_cast<qlonglong>((*session)->record().firing.id));
    EXPECT_EQ(table().model()->index(0, 0).data(), u"lidded jar"_qs);
    firings().setCurrentIndex(firings().findData(static_cast<qint64>(m_firing)));
    Q_EMIT m_book->bookChanged();
    EXPECT_EQ(firings().currentData().toLongLong(), static_cast<qlonglong>(m_firing))
        << "what was chosen stays";
}

TEST_F(WarePageTest, OutcomesAreTypedPieceAfterPiece) {
    m_book.addPiece(m_firing, "tall vase");
    m_book.addPiece(m_firing, "bowl");
    start();
    goTo(0, WareColumn::crystals);
    type(u"3"_qs);
    EXPECT_EQ(place(), Place(0, WareColumn::largest));
    type(u"41.5"_qs);
    press(Qt::Key_Enter);
    press(Qt::Key_Return); // nothing typical
    type(u"4"_qs);
    press(Qt::Key_Return);
    type(u"ice blue"_qs);
    press(Qt::Key_Return);
    press(Qt::Key_Return); // no ground
    type(u"2 mm"_qs);
    press(Qt::Key_Return);
    type(u"y"_qs); // the catcher came off clean
    EXPECT_EQ(place(), Place(0, WareColumn::faults));
    type(u"pinh"_qs); // completed
    press(Qt::Key_Return);
    type(u"A"_qs);
    press(Qt::Key_Return);
    press(Qt::Key_Return); // no note
    EXPECT_EQ(place(), Place(1, WareColumn::crystals));
    type(u"0"_qs);
    const auto outcomes = m_book.outcomes(m_firing);
    ASSERT_EQ(outcomes.size(), 2U);
    EXPECT_EQ(outcomes[0].crystals, Crystals::covered);
    EXPECT_EQ(outcomes[0].largest_mm, 41.5);
    EXPECT_EQ(outcomes[0].rings, 4);
    EXPECT_EQ(outcomes[0].crystalColour, "ice blue");
    EXPECT_EQ(outcomes[0].runOff_mm, 2);
    EXPECT_EQ(outcomes[0].catcherClean, true);
    EXPECT_EQ(outcomes[0].knownFaults, std::set{WareFault::pinholes});
    EXPECT_EQ(outcomes[0].grade, "A");
    EXPECT_EQ(outcomes[1].crystals, Crystals::none);
}

TEST_F(WarePageTest, CrystalsAreChosenFromTheirWordsToo) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    goTo(0, WareColumn::crystals);
    press(Qt::Key_F2);
    auto* choice = qobject_cast<QComboBox*>(QApplication::focusWidget());
    ASSERT_TRUE(choice);
    choice->setCurrentText(u"many"_qs);
    press(Qt::Key_Return);
    EXPECT_EQ(m_book.outcomes(m_firing).at(0).crystals, Crystals::many);
    press(Qt::Key_Left);
    press(Qt::Key_Right);
    goTo(0, WareColumn::crystals);
    press(Qt::Key_Delete);
    EXPECT_FALSE(m_book.outcomes(m_firing).at(0).crystals);
}

TEST_F(WarePageTest, SpaceAndTheMouseTick) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::load);
    goTo(0, WareColumn::sagger);
    press(Qt::Key_Space);
    EXPECT_TRUE(m_book.pieces(m_firing)[0].sagger);
    const QRect cell = table().visualRect(table().currentIndex());
    QTest::mouseClick(table().viewport(), Qt::LeftButton, {}, {cell.left() + 10, cell.center().y()});
    EXPECT_FALSE(m_book.pieces(m_firing)[0].sagger);
}

TEST_F(WarePageTest, EscapeLeavesACellAsItWas) {
    m_book.addPiece(m_firing, "tall vase", "ice 3");
    start();
    m_page.showSheet(WarePage::Sheet::load);
    goTo(0, WareColumn::glaze);
    type(u"wrong"_qs);
    press(Qt::Key_Escape);
    EXPECT_EQ(m_book.pieces(m_firing)[0].glaze, "ice 3");
    EXPECT_EQ(place(), Place(0, WareColumn::glaze));
}

TEST_F(WarePageTest, WhatIsRefusedIsSaidOnThePage) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::load);
    goTo(0, WareColumn::piece);
    press(Qt::Key_Delete);
    EXPECT_TRUE(warnings().contains(u"A piece has a name"));
    goTo(0, WareColumn::glaze);
    type(u"ice"_qs);
    press(Qt::Key_Return);
    EXPECT_TRUE(warnings().isEmpty());
}

TEST_F(WarePageTest, AGasKilnWithoutSaggersIsPointedOut) {
    const FiringId gas = m_book.addFiring(m_book.addKiln("Smoke", Fuel::gas), {.began = noonOfMarch(3)});
    m_book.addPiece(gas, "tall vase");
    m_book.addPiece(gas, "bowl", {}, true);
    start();
    m_page.showFiring(gas);
    EXPECT_TRUE(warnings().contains(u"1 piece stands in the flame without a sagger"))
        << warnings().toStdString();
    m_page.showSheet(WarePage::Sheet::load);
    goTo(0, WareColumn::sagger);
    table().setFocus();
    type(u"1"_qs);
    EXPECT_EQ(place(), Place(1, WareColumn::piece));
    EXPECT_TRUE(warnings().isEmpty());
    m_page.showFiring(m_firing);
    EXPECT_TRUE(warnings().isEmpty());
}

TEST_F(WarePageTest, TheLastLoadIsCopied) {
    m_book.addPiece(m_firing, "tall vase", "ice 3", true);
    m_book.addPiece(m_firing, "bowl", "lichen");
    const FiringId empty = m_book.addFiring(m_kiln, {.title = "Glaze tests", .began = noonOfMarch(5)});
    m_book.addPiece(m_book.addFiring(m_book.addKiln("other"), {.began = noonOfMarch(6)}), "not this");
    const FiringId now = m_book.addFiring(m_kiln, {.title = "Lichen", .began = noonOfMarch(8), .live = true});
    start();
    EXPECT_TRUE(firings().currentText().startsWith(u"Lichen")) << "a live firing comes first";
    click(u"Copy the last load"_qs);
    const auto pieces = m_book.pieces(now);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_EQ(pieces[0].name, "tall vase");
    EXPECT_EQ(pieces[0].glaze, "ice 3");
    EXPECT_TRUE(pieces[0].sagger);
    EXPECT_EQ(table().model()->rowCount(), 3);
    EXPECT_TRUE(m_book.pieces(empty).empty());
    m_page.showFiring(m_firing);
    m_page.showSheet(WarePage::Sheet::load);
    click(u"Copy the last load"_qs);
    EXPECT_TRUE(warnings().contains(u"No earlier firing"));
}

TEST_F(WarePageTest, APieceTakenOutCanBePutBack) {
    const PieceId vase = m_book.addPiece(m_firing, "tall vase", "ice 3");
    m_book.addPiece(m_firing, "bowl");
    expectGood(m_book->writer().set({vase, Crystals::many, 40, 3, "", "A", ""}));
    start();
    click(u"Take out"_qs);
    ASSERT_EQ(m_book.pieces(m_firing).size(), 1U);
    EXPECT_TRUE(m_book.outcomes(m_firing).empty());
    click(u"Undo"_qs);
    ASSERT_EQ(m_book.pieces(m_firing).size(), 2U);
    ASSERT_EQ(m_book.outcomes(m_firing).size(), 1U);
    EXPECT_EQ(m_book.outcomes(m_firing)[0].largest_mm, 40);
    EXPECT_EQ(table().model()->rowCount(), 3);
}

TEST_F(WarePageTest, TellsOthersAndHearsThemWithoutLosingItsPlace) {
    m_book.addPiece(m_firing, "tall vase");
    m_book.addPiece(m_firing, "bowl");
    start();
    m_page.showSheet(WarePage::Sheet::load);
    QSignalSpy told(&m_book.notebook(), &Notebook::bookChanged);
    goTo(1, WareColumn::glaze);
    type(u"ice"_qs);
    press(Qt::Key_Return);
    EXPECT_EQ(told.count(), 1);
    m_book.addPiece(m_firing, "jug");
    Q_EMIT m_book->bookChanged();
    EXPECT_EQ(table().model()->rowCount(), 4);
    EXPECT_EQ(place(), Place(1, WareColumn::application));
}

TEST_F(WarePageTest, IsUsableByKeyboard) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    expectUsableByKeyboard(m_page);
}

TEST_F(WarePageTest, AnEmptyBookSaysWhatToDo) {
    NotebookOnDisk empty;
    WarePage page(empty.notebook(), m_theme);
    present(page);
    EXPECT_FALSE(page.findChild<WareTable*>()->isEnabled());
    const auto labels = page.findChildren<QLabel*>();
    EXPECT_TRUE(
        std::ranges::any_of(labels, [](const QLabel* l) { return l->text().contains(u"No firing yet"); }));
}

TEST_F(WarePageTest, AColourIsPickedForTheCrystalsOrTheGround) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::outcome);
    m_page.setColourChooser([](QColor, const QString&) { return QColor(0x40, 0x80, 0xc0); });
    goTo(0, WareColumn::groundColour);
    press(Qt::Key_F4);
    goTo(0, WareColumn::crystals);
    click(u"Pick a colour"_qs);
    m_page.setColourChooser([](QColor, const QString&) { return QColor(); });
    press(Qt::Key_F4);
    const auto outcome = m_book.outcomes(m_firing).at(0);
    EXPECT_EQ(outcome.groundPicked, "#4080c0");
    EXPECT_EQ(outcome.crystalPicked, "#4080c0");
}

TEST_F(WarePageTest, PhotosAreAddedMeasuredAndTakenAway) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::outcome);
    const QTemporaryDir folder;
    QFile file(folder.filePath(u"vase.jpg"_qs));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(photoJpeg(paintedPhoto(1600, 1200, true)));
    file.close();
    auto& bar = *m_page.findChild<PhotoBar*>();
    bar.setFileChooser([&] { return QStringList{file.fileName(), folder.filePath(u"missing.jpg"_qs)}; });
    goTo(0, WareColumn::crystals);
    click(u"Add photos"_qs);
    EXPECT_TRUE(warnings().contains(u"no such file"));
    ASSERT_EQ(bar.model().rowCount(), 1);
    EXPECT_EQ(table().model()->index(0, int(WareColumn::photos)).data(), u"1"_qs);
    MeasureWindow* window = bar.measure();
    ASSERT_TRUE(window);
    window->resize(900, 700);
    for (const QPointF place : {QPointF(600, 600), {1000, 600}, {800, 658}, {800, 822}})
        QTest::mouseClick(&window->view(), Qt::LeftButton, {}, window->view().toScreen(place).toPoint());
    window->findChild<QLineEdit*>()->setText(u"100"_qs);
    window->findChildren<QPushButton*>().last()->click();
    ASSERT_EQ(m_book.outcomes(m_firing).size(), 1U);
    EXPECT_NEAR(m_book.outcomes(m_firing)[0].largest_mm.value_or(0), 41, 2);
    EXPECT_TRUE(bar.model().index(0).data().toString().contains(u"mm ±"));
    bar.list().setCurrentIndex(bar.model().index(0));
    click(u"Take away"_qs);
    EXPECT_EQ(bar.model().rowCount(), 0);
    click(u"Undo"_qs);
    ASSERT_EQ(bar.model().rowCount(), 1);
    EXPECT_TRUE(bar.model().index(0).data().toString().contains(u"mm ±")) << "its measure too";
}

TEST_F(WarePageTest, APieceAndAPackAreMovedOnTheMap) {
    const PieceId vase = m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::map);
    auto& pane = *m_page.findChild<ShelfMapPane*>();
    auto& view = pane.view();
    view.setFocus();
    view.setCurrent(*pane.map().rowOf(vase));
    press(Qt::Key_Return);
    press(Qt::Key_PageUp);
    press(Qt::Key_Left);
    press(Qt::Key_Return);
    auto piece = m_book.pieces(m_firing).at(0);
    EXPECT_EQ(piece.shelf, "middle shelf") << "where the pack stands";
    ASSERT_TRUE(piece.spot);
    const auto packs = m_book->reader().packs(m_firing);
    ASSERT_TRUE(packs && !packs->empty());
    const int pack = *pane.map().rowOf(packs->front().id);
    const QPoint from = view.middleOf(pack).toPoint();
    QTest::mousePress(&view, Qt::LeftButton, {}, from);
    QTest::mouseMove(&view, from + QPoint(60, 40));
    QTest::mouseRelease(&view, Qt::LeftButton, {}, from + QPoint(60, 40));
    EXPECT_TRUE(m_book->reader().packs(m_firing)->front().spot);
    EXPECT_EQ(m_book->reader().packs(m_firing)->front().shelf, "middle shelf");
    click(u"Undo"_qs);
    click(u"Undo"_qs);
    EXPECT_FALSE(m_book->reader().packs(m_firing)->front().spot);
    EXPECT_FALSE(m_book.pieces(m_firing).at(0).spot);
    EXPECT_EQ(m_book.pieces(m_firing).at(0).shelf, "2") << "as it was";
}

TEST_F(WarePageTest, EscapePutsBackWhatIsCarried) {
    m_book.addPiece(m_firing, "tall vase");
    start();
    m_page.showSheet(WarePage::Sheet::map);
    auto& view = m_page.findChild<ShelfMapPane*>()->view();
    view.setFocus();
    press(Qt::Key_End);
    press(Qt::Key_Return);
    EXPECT_TRUE(view.carries());
    press(Qt::Key_Up);
    press(Qt::Key_Escape);
    EXPECT_FALSE(view.carries());
    EXPECT_FALSE(m_book.pieces(m_firing).at(0).spot);
}

TEST_F(WarePageTest, IsPictured) {
    const FiringId gas = m_book.addFiring(m_book.addKiln("Smoke", Fuel::gas),
                                          {.title = "Lichen and ice", .began = noonOfMarch(3)});
    const char* names[] = {"tall vase", "bottle", "bowl, wide", "moon jar", "test tile 1", "test tile 2"};
    int i = 0;
    for (const char* name : names) {
        const PieceId piece = m_book.addPiece(gas, name, i % 2 ? "lichen" : "ice 3", i < 3);
        if (i < 4)
            expectGood(m_book->writer().set({piece, static_cast<Crystals>(i), 12.5 * (i + 1), i,
                                             i == 2 ? "pinhole at the foot" : "", i ? "A" : "C",
                                             i == 1 ? "for the fair" : ""}));
        ++i;
    }
    const auto paint = [&](const char* shelf, double x, double y, int row) {
        Piece piece = m_book.pieces(gas)[static_cast<std::size_t>(row)];
        piece.shelf = shelf;
        piece.form = row % 2 ? "bowl" : "bottle";
        piece.clay = "white";
        piece.application_g_per_cm2 = 0.11 + 0.01 * row;
        piece.spot = MapSpot{x, y};
        expectGood(m_book->writer().alter(piece));
    };
    paint("middle shelf", 0.2, 0.8, 0);
    paint("middle shelf", 0.8, 0.3, 1);
    paint("top shelf", 0.5, 0.5, 2);
    Outcome rich = m_book.outcomes(gas)[1];
    rich.crystalColour = "ice blue";
    rich.crystalPicked = "#9cc3de";
    rich.groundColour = "honey";
    rich.groundPicked = "#b9822f";
    rich.runOff_mm = 3;
    rich.catcherClean = true;
    rich.knownFaults = {WareFault::pinholes};
    expectGood(m_book->writer().set(rich));
    present(m_page, 1180, 640);
    m_page.showFiring(gas);
    const QTemporaryDir folder;
    QFile file(folder.filePath(u"vase.jpg"_qs));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(photoJpeg(paintedPhoto(1600, 1200, true)));
    file.close();
    goTo(1, WareColumn::crystals);
    m_page.findChild<PhotoBar*>()->addFiles({file.fileName()});
    const std::pair<WarePage::Sheet, QString> sheets[] = {{WarePage::Sheet::outcome, u"ware"_qs},
                                                          {WarePage::Sheet::load, u"ware-load"_qs},
                                                          {WarePage::Sheet::map, u"ware-map"_qs}};
    for (const auto& [sheet, name] : sheets) {
        m_page.resize(1180, 640);
        m_page.showSheet(sheet);
        keepScreens(m_page, m_theme, name);
        m_page.resize(924, 520);
        keepScreens(m_page, m_theme, name + u"-small"_qs);
    }
}

} // namespace ringhold::test
