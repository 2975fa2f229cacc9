#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/ware/ware_cells.h"
#include "ui/ware/ware_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

namespace ringhold::test {
namespace {

class WareModelTest : public testing::Test {
  protected:
    QModelIndex cell(int row, WareColumn column) const {
        return m_model.index(row, static_cast<int>(column));
    }
    QString said(int row, WareColumn column) const { return cell(row, column).data().toString(); }
    void reload(bool flame = false) {
        m_model.show(m_firing, m_book.pieces(m_firing), m_book.outcomes(m_firing), flame);
    }

    NotebookOnDisk m_book;
    FiringId m_firing = m_book.addFiring(m_book.addKiln("Heron"), {.began = noonOfMarch(1)});
    PieceId m_vase = m_book.addPiece(m_firing, "tall vase", "ice 3");
    WareModel m_model{m_book.notebook(), WareModel::Access::write};
    QAbstractItemModelTester m_tester{&m_model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    QSignalSpy m_troubled{&m_model, &WareModel::troubled};
    QSignalSpy m_written{&m_model, &WareModel::written};
};

} // namespace

TEST_F(WareModelTest, ShowsPiecesAndALineForANewOne) {
    EXPECT_EQ(m_model.rowCount(), 0);
    reload();
    EXPECT_EQ(m_model.rowCount(), 2);
    EXPECT_EQ(said(0, WareColumn::piece), u"tall vase");
    EXPECT_EQ(said(0, WareColumn::glaze), u"ice 3");
    EXPECT_EQ(cell(0, WareColumn::catcher).data(Qt::CheckStateRole), int(Qt::Checked));
    EXPECT_TRUE(m_model.isNewRow(1));
}

TEST_F(WareModelTest, ANameInTheLastLineAddsAPieceAndAnotherLine) {
    reload();
    EXPECT_TRUE(m_model.setData(cell(1, WareColumn::piece), u" small bowl "_qs));
    EXPECT_EQ(m_model.rowCount(), 3);
    ASSERT_EQ(m_book.pieces(m_firing).size(), 2U);
    EXPECT_EQ(m_book.pieces(m_firing)[1].name, "small bowl");
    EXPECT_EQ(m_written.count(), 1);
    EXPECT_FALSE(m_model.setData(cell(2, WareColumn::piece), u"  "_qs));
    EXPECT_FALSE(m_model.setData(cell(2, WareColumn::glaze), u"ice"_qs));
}

TEST_F(WareModelTest, WhatIsSetIsInTheBook) {
    reload();
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::shelf), u"top"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::catcher), int(Qt::Unchecked), Qt::CheckStateRole));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::sagger), int(Qt::Checked), Qt::CheckStateRole));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::crystals), u"2"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::largest), u"41,5"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::rings), u"4"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::faults), u"chipped"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::grade), u"A"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::note), u"sold"_qs));
    expectSame(m_book.pieces(m_firing), {{m_vase, m_firing, "tall vase", "ice 3", "top", false, true}});
    expectSame(m_book.outcomes(m_firing), {{m_vase, Crystals::many, 41.5, 4, "chipped", "A", "sold"}});
    EXPECT_EQ(m_model.judgedCount(), 1);
    EXPECT_EQ(m_written.count(), 9);
}

TEST_F(WareModelTest, AValueThatIsTakenAwayIsGone) {
    reload();
    for (const auto column : {WareColumn::crystals, WareColumn::largest, WareColumn::rings}) {
        EXPECT_TRUE(m_model.setData(cell(0, column), u"3"_qs));
        EXPECT_TRUE(m_model.setData(cell(0, column), QString()));
    }
    expectSame(m_book.outcomes(m_firing), {{m_vase, {}, {}, {}, "", "", ""}});
    EXPECT_EQ(m_model.judgedCount(), 0);
}

TEST_F(WareModelTest, RefusesWhatMakesNoSenseAndSaysWhy) {
    reload();
    const std::pair<WareColumn, const char*> cases[] = {{WareColumn::piece, " "},
                                                        {WareColumn::crystals, "4"},
                                                        {WareColumn::crystals, "lots"},
                                                        {WareColumn::largest, "big"},
                                                        {WareColumn::largest, "-1"},
                                                        {WareColumn::largest, "nan"},
                                                        {WareColumn::rings, "1.5"},
                                                        {WareColumn::rings, "-2"},
                                                        {WareColumn::rings, "100"},
                                                        {WareColumn::application, "thick"},
                                                        {WareColumn::application, "0"},
                                                        {WareColumn::application, "24/0"},
                                                        {WareColumn::catcherClean, "perhaps"},
                                                        {WareColumn::runOff, "9999 mm"}};
    for (const auto& [column, text] : cases) {
        EXPECT_FALSE(m_model.setData(cell(0, column), QString::fromLatin1(text))) << text;
        ASSERT_FALSE(m_troubled.isEmpty()) << text;
        EXPECT_FALSE(m_troubled.takeFirst().at(0).toString().isEmpty());
    }
    EXPECT_EQ(m_written.count(), 0);
    EXPECT_EQ(said(0, WareColumn::piece), u"tall vase");
    EXPECT_TRUE(m_book.outcomes(m_firing).empty());
}

TEST_F(WareModelTest, WritesNothingWhenNothingChanged) {
    reload();
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::glaze), u"ice 3"_qs));
    EXPECT_EQ(m_written.count(), 0);
}

TEST_F(WareModelTest, CountsWhatStandsInTheFlame) {
    m_book.addPiece(m_firing, "bowl", {}, true);
    reload();
    EXPECT_EQ(m_model.openToFlame(), 0);
    reload(true);
    EXPECT_EQ(m_model.openToFlame(), 1);
    EXPECT_EQ(said(0, WareColumn::sagger), u"in flame");
    EXPECT_EQ(said(1, WareColumn::sagger), u"");
    m_model.showZincFree({u"Ice 3"_qs});
    EXPECT_EQ(m_model.openToFlame(), 0) << "the flame has nothing to take";
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::glaze), u"ice 3 + lichen"_qs));
    EXPECT_EQ(m_model.openToFlame(), 1);
}

TEST_F(WareModelTest, KeepsAllThatALoadAndAnOutcomeHave) {
    reload();
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::form), u"bottle"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::clay), u"white"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::application), u"24/200"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::typical), u"12"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::crystalColour), u"ice blue"_qs));
    EXPECT_TRUE(m_model.pick(cell(0, WareColumn::crystalColour), u"#a0c0e0"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::groundColour), u"honey"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::runOff), u"to the foot, 3,5 mm"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::catcherClean), u"y"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::faults), u"pin, chipped, DULL"_qs));
    const auto piece = m_book.pieces(m_firing).at(0);
    EXPECT_EQ(piece.form, "bottle");
    EXPECT_EQ(piece.clay, "white");
    EXPECT_DOUBLE_EQ(piece.application_g_per_cm2.value_or(0), 0.12);
    const auto outcome = m_book.outcomes(m_firing).at(0);
    EXPECT_EQ(outcome.typical_mm, 12);
    EXPECT_EQ(outcome.crystalColour, "ice blue");
    EXPECT_EQ(outcome.crystalPicked, "#a0c0e0");
    EXPECT_EQ(outcome.groundColour, "honey");
    EXPECT_EQ(outcome.runOff, "to the foot");
    EXPECT_EQ(outcome.runOff_mm, 3.5);
    EXPECT_EQ(outcome.catcherClean, true);
    EXPECT_EQ(outcome.knownFaults, (std::set{WareFault::pinholes, WareFault::dull}));
    EXPECT_EQ(outcome.faults, "chipped");
    EXPECT_EQ(said(0, WareColumn::faults), u"pinholes, dull, chipped");
    EXPECT_EQ(cell(0, WareColumn::crystalColour).data(Qt::DecorationRole).value<QColor>(),
              QColor(0xa0, 0xc0, 0xe0));
}

TEST_F(WareModelTest, EveryChangeCanBeUndoneAndDoneAgain) {
    reload();
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::glaze), u"lichen"_qs));
    EXPECT_TRUE(m_model.setData(cell(0, WareColumn::largest), u"41"_qs));
    EXPECT_TRUE(m_model.setData(cell(1, WareColumn::piece), u"bowl"_qs));
    EXPECT_TRUE(m_model.takeOut(0));
    EXPECT_EQ(m_book.pieces(m_firing).size(), 1U);
    for (int i = 0; i < 4; ++i)
        m_model.undoStack().undo();
    ASSERT_EQ(m_book.pieces(m_firing).size(), 1U);
    EXPECT_EQ(m_book.pieces(m_firing)[0].id, m_vase);
    EXPECT_EQ(m_book.pieces(m_firing)[0].glaze, "ice 3");
    EXPECT_EQ(said(0, WareColumn::largest), u"");
    for (int i = 0; i < 3; ++i)
        m_model.undoStack().redo();
    ASSERT_EQ(m_book.pieces(m_firing).size(), 2U);
    EXPECT_EQ(m_book.pieces(m_firing)[0].glaze, "lichen");
    EXPECT_EQ(said(0, WareColumn::largest), u"41");
    EXPECT_EQ(said(1, WareColumn::piece), u"bowl");
}

TEST_F(WareModelTest, ARefusedChangeLeavesNothingToUndo) {
    reload();
    EXPECT_FALSE(m_model.setData(cell(0, WareColumn::rings), u"many"_qs));
    EXPECT_FALSE(m_model.undoStack().canUndo());
    expectGood(m_book->writer().remove(m_vase));
    EXPECT_FALSE(m_model.setData(cell(0, WareColumn::glaze), u"ice 4"_qs));
    EXPECT_FALSE(m_model.undoStack().canUndo());
}

TEST_F(WareModelTest, IsNotResetForWhatItShowsAlready) {
    reload();
    QSignalSpy resets(&m_model, &QAbstractItemModel::modelReset);
    reload();
    EXPECT_EQ(resets.count(), 0);
    m_book.addPiece(m_firing, "bowl");
    reload();
    EXPECT_EQ(resets.count(), 1);
}

TEST_F(WareModelTest, ToReadOnlyItHasNoNewLineAndTakesNothing) {
    WareModel model(m_book.notebook(), WareModel::Access::read);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(m_firing, m_book.pieces(m_firing), {}, false);
    EXPECT_EQ(model.rowCount(), 1);
    EXPECT_FALSE(model.setData(model.index(0, int(WareColumn::glaze)), u"other"_qs));
    EXPECT_FALSE(model.flags(model.index(0, int(WareColumn::glaze))) & Qt::ItemIsEditable);
    EXPECT_EQ(model.index(0, static_cast<int>(WareColumn::catcher)).data(), u"yes"_qs);
}

} // namespace ringhold::test
