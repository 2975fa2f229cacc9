#include "ui/ware/photo_measure.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace ringhold::test {
namespace {

PhotoMarks marksAt(std::initializer_list<QPointF> places) {
    PhotoMarks marks;
    for (const QPointF place : places)
        marks.add(place);
    return marks;
}

const PhotoMarks sample = marksAt({{100, 100}, {500, 100}, {300, 300}, {300, 464}});

} // namespace

TEST(PhotoMeasure, TheKnownLengthGivesTheScale) {
    const auto length = measuredOn(sample, 100);
    ASSERT_TRUE(length);
    EXPECT_DOUBLE_EQ(length->size_mm, 41);
}

TEST(PhotoMeasure, TheErrorIsThatOfManyMarkings) {
    std::mt19937 chance(7);
    const MarkingError error{1.5, 0.25};
    std::normal_distribution<double> off(0, error.mark_px), known(100, error.known_mm);
    double sum = 0, squares = 0;
    constexpr int markings = 20000;
    for (int i = 0; i < markings; ++i) {
        PhotoMarks marks;
        for (int m = 0; m < photoMarks; ++m)
            marks.add(*sample.at(static_cast<PhotoMark>(m)) + QPointF(off(chance), off(chance)));
        const double size = measuredOn(marks, known(chance), error)->size_mm;
        sum += size;
        squares += size * size;
    }
    const double mean = sum / markings;
    const double sd = std::sqrt(squares / markings - mean * mean);
    const auto stated = measuredOn(sample, 100, error);
    EXPECT_NEAR(stated->sd_mm, sd, 0.03 * sd);
    EXPECT_NEAR(stated->size_mm, mean, 0.02);
}

TEST(PhotoMeasure, RefusesWhatGivesNoScale) {
    EXPECT_FALSE(measuredOn(marksAt({{0, 0}, {400, 0}, {5, 5}}), 100));
    EXPECT_FALSE(measuredOn(sample, 0));
    EXPECT_FALSE(measuredOn(sample, -3));
    EXPECT_FALSE(measuredOn(sample, std::nan("")));
    EXPECT_FALSE(measuredOn(marksAt({{0, 0}, {19, 0}, {5, 5}, {50, 50}}), 100));
    EXPECT_TRUE(measuredOn(marksAt({{0, 0}, {20, 0}, {5, 5}, {50, 50}}), 100));
    EXPECT_TRUE(measuredOn(marksAt({{0, 0}, {200, 0}, {5, 5}, {5, 5}}), 100)) << "a seed: no size, an error";
}

TEST(PhotoMeasure, MarksAreSetMovedAndTakenBack) {
    PhotoMarks marks;
    EXPECT_EQ(marks.next(), PhotoMark::knownFrom);
    EXPECT_FALSE(marks.at(PhotoMark::knownFrom));
    EXPECT_FALSE(marks.known());
    for (int i = 0; i < 5; ++i)
        marks.add({10.0 * i, 0});
    EXPECT_TRUE(marks.complete());
    EXPECT_FALSE(marks.next());
    EXPECT_EQ(marks.at(PhotoMark::crystalTo), QPointF(30, 0)) << "a fifth does nothing";
    EXPECT_EQ(marks.near({12, 0}, 5), PhotoMark::knownTo);
    EXPECT_FALSE(marks.near({15, 30}, 5));
    marks.move(PhotoMark::knownTo, {11, 1});
    EXPECT_EQ(marks.known()->p2(), QPointF(11, 1));
    marks.takeBack();
    EXPECT_EQ(marks.next(), PhotoMark::crystalTo);
    EXPECT_FALSE(marks.crystal());
    marks.move(PhotoMark::crystalTo, {1, 1});
    EXPECT_FALSE(marks.at(PhotoMark::crystalTo));
    marks.clear();
    marks.takeBack();
    EXPECT_EQ(marks.count(), 0);
}

} // namespace ringhold::test
