#include "ui/ware/shelf_map_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

Piece pieceOn(int id, const char* name, const char* shelf, std::optional<MapSpot> spot = {}) {
    Piece piece;
    piece.id = static_cast<PieceId>(id);
    piece.name = name;
    piece.glaze = "ice 3";
    piece.shelf = shelf;
    piece.spot = spot;
    return piece;
}

class ShelfMapTest : public testing::Test {
  protected:
    ShelfMapModel m_map;
    QAbstractItemModelTester m_tester{&m_map, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

} // namespace

TEST_F(ShelfMapTest, ShelvesComeAsTheyAreNamedAndTheUnplacedLast) {
    Pack pack;
    pack.id = static_cast<PackId>(1);
    pack.place = "middle";
    pack.cones = {"8", "9"};
    m_map.show({pieceOn(1, "vase", "top"), pieceOn(2, "bowl", ""), pieceOn(3, "jug", "top")}, {pack},
               {u"low"_qs});
    EXPECT_EQ(m_map.shelves(), (QStringList{u"top"_qs, u"middle"_qs, u"low"_qs, QString()}));
    ASSERT_EQ(m_map.rowCount(), 4);
    EXPECT_EQ(m_map.item(1).name, u"jug"_qs);
    EXPECT_TRUE(m_map.item(2).isPack());
    EXPECT_EQ(m_map.index(2).data(), u"cones 8 9, on middle"_qs);
    EXPECT_EQ(m_map.index(3).data(), u"bowl, ice 3, on no shelf yet"_qs);
    EXPECT_EQ(m_map.rowOf(static_cast<PieceId>(3)), 1);
    EXPECT_FALSE(m_map.rowOf(static_cast<PieceId>(9)));
}

TEST_F(ShelfMapTest, WhatHasNoSpotIsSetOutApart) {
    std::vector<Piece> pieces{pieceOn(1, "a", "top", MapSpot{0.1, 0.9})};
    for (int i = 2; i < 9; ++i)
        pieces.push_back(pieceOn(i, "b", "top"));
    m_map.show(pieces, {}, {});
    EXPECT_EQ(m_map.spotOf(0), (MapSpot{0.1, 0.9}));
    for (int i = 1; i < m_map.rowCount(); ++i)
        for (int j = i + 1; j < m_map.rowCount(); ++j)
            EXPECT_NE(m_map.spotOf(i), m_map.spotOf(j));
}

TEST_F(ShelfMapTest, IsNotResetForWhatItShowsAlready) {
    m_map.show({pieceOn(1, "vase", "top")}, {}, {});
    QSignalSpy resets(&m_map, &QAbstractItemModel::modelReset);
    m_map.show({pieceOn(1, "vase", "top")}, {}, {});
    EXPECT_EQ(resets.count(), 0);
    m_map.show({pieceOn(1, "vase", "top", MapSpot{0.5, 0.5})}, {}, {});
    EXPECT_EQ(resets.count(), 1);
}

TEST(SpotWords, TellTheNineParts) {
    EXPECT_EQ(spotWords({0.5, 0.5}), u"in the middle"_qs);
    EXPECT_EQ(spotWords({0.1, 0.9}), u"left, at the back"_qs);
    EXPECT_EQ(spotWords({0.9, 0.1}), u"right, in front"_qs);
    EXPECT_EQ(spotWords({0.5, 0.1}), u"in front"_qs);
}

} // namespace ringhold::test
