#include "tests/ui/spyhole/climbing_firing.h"
#include "ui/spyhole/spyhole_model.h"

#include <QSignalSpy>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

class Spyhole : public testing::Test {
  protected:
    Spyhole() : m_model(m_firing.outside()) {
        m_model.setFiring(ClimbingFiring::packs(), ClimbingFiring::looks(), "10");
    }

    /// Cone and hour of the looks entered, in order.
    std::vector<std::pair<std::string, double>> entered() const {
        std::vector<std::pair<std::string, double>> pairs;
        for (const auto& look : m_model.looks())
            pairs.emplace_back(look.cone, look.hour);
        return pairs;
    }

    ClimbingFiring m_firing;
    SpyholeModel m_model;
};

using testing::ElementsAre;
using testing::IsEmpty;
using testing::Pair;

TEST_F(Spyhole, DrawsWhatWasSeenLastAndWhatTheModelThinks) {
    const auto drawn = m_model.drawing();
    ASSERT_EQ(drawn.cones.size(), 3u);
    EXPECT_DOUBLE_EQ(drawn.cones[0].hour, 1);
    EXPECT_DOUBLE_EQ(drawn.cones[1].hour, 0);
    ASSERT_TRUE(drawn.cones[0].ghost);
    EXPECT_GT(drawn.cones[0].ghost->hour, 1.5); // twenty minutes have passed
    EXPECT_LE(drawn.cones[0].ghost->low, drawn.cones[0].ghost->hour);
    EXPECT_GE(drawn.cones[0].ghost->high, drawn.cones[0].ghost->hour);
    EXPECT_FALSE(drawn.cones[0].picked);
    EXPECT_FALSE(m_model.canWrite());
    EXPECT_TRUE(m_model.previewWords().startsWith(QStringLiteral("Without a new look: cone 10 down ")));
}

TEST_F(Spyhole, TellsHowWellTheModelFitsEachCone) {
    ASSERT_EQ(m_model.fitNotes().size(), 3);
    EXPECT_TRUE(m_model.fitNotes()[1].startsWith(QStringLiteral("cone 10: the model is within ")));
    m_model.setCurrentPack(1);
    EXPECT_EQ(m_model.fitNotes().size(), 2);
}

TEST_F(Spyhole, TellsTheEffectBeforeItIsWritten) {
    QSignalSpy changes(&m_model, &SpyholeModel::changed);
    m_model.enter(0, 4);
    EXPECT_EQ(changes.count(), 1);
    EXPECT_DOUBLE_EQ(m_model.drawing().cones[0].hour, 4);
    EXPECT_TRUE(m_model.drawing().cones[0].picked);
    const auto preview = ClimbingFiring::preview(m_model.looks());
    ASSERT_TRUE(preview.ok());
    EXPECT_EQ(m_model.previewWords(),
              effectWords(preview->without.packs[0].cones[1], preview->with.packs[0].cones[1], 1, {}));
    EXPECT_NE(preview->with.packs[0].cones[1].down.median, preview->without.packs[0].cones[1].down.median);
    EXPECT_THAT(m_firing.m_written, IsEmpty());
}

TEST_F(Spyhole, WritesWhatWasEnteredOverAllPacks) {
    m_model.enter(0, 4);
    m_model.enter(1, 0.5);
    m_model.setCurrentPack(1);
    m_model.enter(0, 6);
    QSignalSpy written(&m_model, &SpyholeModel::written);
    ASSERT_TRUE(m_model.write().ok());
    EXPECT_EQ(written.count(), 1);
    ASSERT_EQ(m_firing.m_written.size(), 3u);
    EXPECT_EQ(m_firing.m_written[0].cone, "9");
    EXPECT_EQ(m_firing.m_written[0].pack, PackId{1});
    EXPECT_EQ(m_firing.m_written[0].at, ClimbingFiring::clock("18:03"));
    EXPECT_DOUBLE_EQ(m_firing.m_written[1].hour, 0.5);
    EXPECT_EQ(m_firing.m_written[2].pack, PackId{2});
    EXPECT_EQ(m_firing.m_written[2].cone, "8");
    EXPECT_THAT(entered(), IsEmpty());
}

TEST_F(Spyhole, KeepsWhatCouldNotBeWritten) {
    m_firing.m_roomOnDisk = 1;
    m_model.enter(0, 4);
    m_model.setTyped(QStringLiteral("10 1, 11 standing, 5 min ago"));
    const auto done = m_model.write();
    ASSERT_FALSE(done.ok());
    EXPECT_EQ(done.error().what, "the disk is full");
    ASSERT_EQ(m_firing.m_written.size(), 1u);
    EXPECT_EQ(m_firing.m_written.front().cone, "9");
    EXPECT_THAT(entered(), ElementsAre(Pair("10", 1), Pair("11", 0)));
    EXPECT_EQ(m_model.atWords(), QStringLiteral("17:58"));
}

TEST_F(Spyhole, TakesTypedLooksAsTheyAreTyped) {
    m_model.setTyped(QStringLiteral("10"));
    EXPECT_FALSE(m_model.typedTrouble().isEmpty());
    EXPECT_THAT(entered(), IsEmpty());
    m_model.setTyped(QStringLiteral("10 3"));
    EXPECT_THAT(entered(), ElementsAre(Pair("10", 3)));
    m_model.setTyped(QStringLiteral("10 3.5"));
    EXPECT_THAT(entered(), ElementsAre(Pair("10", 3.5)));
    m_model.setTyped(QStringLiteral("9 down, 10 3.5"));
    EXPECT_THAT(entered(), ElementsAre(Pair("9", 6), Pair("10", 3.5)));
    m_model.setTyped(QString());
    EXPECT_THAT(entered(), IsEmpty());
}

TEST_F(Spyhole, TakesTheTimeThatIsTyped) {
    m_model.setTime(MinutesAgo{2});
    m_model.setTyped(QStringLiteral("17:51 10 3"));
    EXPECT_TRUE(m_model.timeIsTyped());
    EXPECT_EQ(m_model.atWords(), QStringLiteral("17:51"));
    m_model.setTyped(QStringLiteral("10 3"));
    EXPECT_FALSE(m_model.timeIsTyped());
    EXPECT_EQ(m_model.atWords(), QStringLiteral("18:01"));
}

TEST_F(Spyhole, LetsTheLaterOfTypedAndClickedCount) {
    m_model.enter(1, 1);
    m_model.setTyped(QStringLiteral("10 2"));
    EXPECT_THAT(entered(), ElementsAre(Pair("10", 2)));
    m_model.enter(1, 3);
    EXPECT_THAT(entered(), ElementsAre(Pair("10", 3)));
    EXPECT_TRUE(m_model.typed().isEmpty());
    m_model.enter(1, std::nullopt);
    EXPECT_THAT(entered(), IsEmpty());
}

TEST_F(Spyhole, KeepsTheOtherTypedConesWhenOneIsClicked) {
    m_model.setTyped(QStringLiteral("9 4, 10 1"));
    m_model.enter(1, 2);
    EXPECT_THAT(entered(), ElementsAre(Pair("9", 4), Pair("10", 2)));
}

TEST_F(Spyhole, FindsATypedConeInAnotherPack) {
    m_model.setTyped(QStringLiteral("8 5"));
    ASSERT_EQ(m_model.looks().size(), 1u);
    EXPECT_EQ(m_model.looks().front().pack, PackId{2});
    m_model.setCurrentPack(1);
    m_model.setTyped(QStringLiteral("9 5"));
    EXPECT_EQ(m_model.looks().front().pack, PackId{2}) << "the current pack's 9";
}

TEST_F(Spyhole, TellsATypedConeThatIsNotThere) {
    m_model.setTyped(QStringLiteral("9 4, 6 2"));
    EXPECT_TRUE(m_model.typedTrouble().contains(QStringLiteral("cone 6 is not in a pack")));
    EXPECT_THAT(entered(), IsEmpty());
    EXPECT_FALSE(m_model.write().ok());
}

TEST_F(Spyhole, MirrorsALeftLeaningPack) {
    EXPECT_FALSE(m_model.drawing().leansLeft);
    m_model.setCurrentPack(1);
    EXPECT_TRUE(m_model.drawing().leansLeft);
    EXPECT_EQ(m_model.drawing().cones.front().name, QStringLiteral("8"));
}

struct When {
    LookTime time;
    const char* at; ///< empty: none
};

class SpyholeTime : public Spyhole, public testing::WithParamInterface<When> {};

TEST_P(SpyholeTime, IsNowOrAgoOrByTheClock) {
    m_model.enter(0, 2);
    m_model.setTime(GetParam().time);
    const std::string expected = GetParam().at;
    EXPECT_EQ(m_model.atWords().toStdString(), expected);
    EXPECT_EQ(m_model.canWrite(), !expected.empty());
    for (const auto& look : m_model.looks())
        EXPECT_EQ(look.at, ClimbingFiring::clock(expected));
}

INSTANTIATE_TEST_SUITE_P(Ways, SpyholeTime,
                         testing::Values(When{MinutesAgo{0}, "18:03"}, When{MinutesAgo{2}, "18:01"},
                                         When{MinutesAgo{10}, "17:53"},
                                         When{ClockTime{QStringLiteral("17:58")}, "17:58"},
                                         When{ClockTime{QStringLiteral("tea")}, ""}));

TEST_F(Spyhole, DoubtsALookAgainstTheModelButWritesIt) {
    m_model.enter(2, 5); // cone 11, which should stand for another while
    ASSERT_EQ(m_model.doubts().size(), 1);
    EXPECT_TRUE(m_model.doubts().front().startsWith(QStringLiteral("11 at 5 o’clock does not fit")))
        << qPrintable(m_model.doubts().front());
    EXPECT_TRUE(m_model.canWrite());
    m_model.enter(2, 0);
    EXPECT_TRUE(m_model.doubts().isEmpty());
}

TEST_F(Spyhole, SaysWhyThereIsNoForecastAndWritesAllTheSame) {
    m_model.enter(0, 1);
    m_firing.m_now = ClimbingFiring::clock("18:40"); // readings have stopped
    m_model.refresh();
    EXPECT_TRUE(m_model.previewWords().startsWith(QStringLiteral("No forecast: ")));
    EXPECT_TRUE(m_model.write().ok());
}

TEST_F(Spyhole, DropsWhatWasEnteredForAPackThatIsGone) {
    m_model.enter(0, 4);
    m_model.setCurrentPack(1);
    m_model.enter(1, 2);
    m_model.setFiring({ClimbingFiring::packs()[1]}, ClimbingFiring::looks());
    EXPECT_EQ(m_model.currentPack(), 0u);
    EXPECT_THAT(entered(), ElementsAre(Pair("9", 2)));
}

TEST_F(Spyhole, LeavesStruckLooksOut) {
    auto looks = ClimbingFiring::looks();
    looks.front().struck = true;
    m_model.setFiring(ClimbingFiring::packs(), looks);
    EXPECT_DOUBLE_EQ(m_model.drawing().cones[0].hour, 0);
}

} // namespace
} // namespace ringhold
