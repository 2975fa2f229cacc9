#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/session/glaze_of_firing.h"

#include <QSignalSpy>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class GlazeOfFiringTest : public testing::Test {
  protected:
    GlazeOfFiringTest() {
        const KilnId kiln = disk.addKiln("Heron");
        probe = disk.addProbe(kiln, "middle");
        for (int day = 1; day <= 3; ++day) {
            PastFiring past;
            past.began = noonOfMarch(day);
            past.probe = probe;
            grow(disk.addFiring(kiln, past), 22 + day);
        }
        PastFiring now;
        now.began = noonOfMarch(9);
        now.probe = probe;
        now.live = true;
        now.curve = {{now.began, Temperature::fromCelsius(1000)}};
        live = disk.addFiring(kiln, now);
        disk.clock().set(noonOfMarch(9) + std::chrono::minutes(1));
        EXPECT_TRUE(disk->resume().empty());
    }
    void grow(FiringId firing, double across_mm) {
        for (const char* name : {"vase", "bowl"}) {
            Outcome outcome;
            outcome.piece = disk.addPiece(firing, name, "Frost fern");
            outcome.largest_mm = across_mm;
            EXPECT_TRUE(disk->writer().set(outcome).ok());
        }
    }
    FiringSession& session() { return *disk->sessions().front(); }

    NotebookOnDisk disk;
    ProbeId probe{};
    FiringId live{};
};

TEST_F(GlazeOfFiringTest, IsReadBesideTheWindow) {
    disk.addPiece(live, "jar", "frost FERN");
    disk.addPiece(live, "test tile", "Lichen + Frost fern");
    GlazeOfFiring glaze(session(), disk.notebook());
    EXPECT_FALSE(glaze.known());
    EXPECT_EQ(glaze.rate().basis, GrowthBasis::published);
    QSignalSpy told(&glaze, &GlazeOfFiring::changed);
    ASSERT_TRUE(told.wait(30'000));
    ASSERT_TRUE(glaze.known());
    EXPECT_EQ(glaze.known()->name, "frost FERN");
    EXPECT_EQ(glaze.known()->knowledge.growth.pieces, 6);
    EXPECT_EQ(glaze.known()->knowledge.growth.firings, 3);
    const auto here = good(GlazeEvidence(disk->book()).of("Frost fern")).growth.rate();
    EXPECT_EQ(glaze.rate().basis, here.basis);
    EXPECT_EQ(glaze.rate().best_um_per_min, here.best_um_per_min);
}

TEST_F(GlazeOfFiringTest, IsReadAgainWhenTheBookChanged) {
    GlazeOfFiring glaze(session(), disk.notebook());
    QSignalSpy told(&glaze, &GlazeOfFiring::changed);
    ASSERT_TRUE(told.wait(30'000));
    EXPECT_FALSE(glaze.known()) << "no piece is in the kiln";
    disk.addPiece(live, "jar", "Frost fern");
    Q_EMIT disk->bookChanged();
    ASSERT_TRUE(told.wait(30'000));
    ASSERT_TRUE(glaze.known());
    EXPECT_EQ(glaze.known()->name, "Frost fern");
}

} // namespace
} // namespace ringhold::test
