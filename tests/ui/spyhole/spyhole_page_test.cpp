#include "tests/support/notebook_on_disk.h"
#include "ui/session/firing_cone.h"
#include "ui/spyhole/spyhole_page.h"
#include "ui/theme/theme.h"

#include <QSignalSpy>
#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

/// A firing that goes on: cone 8 is down, 9 bends, the kiln climbs.
class SpyholeOfAFiring : public testing::Test {
  protected:
    SpyholeOfAFiring() {
        Curve curve = test::crystalCurve(m_began);
        std::erase_if(curve, [](const CurvePoint& point) { return point.at > m_lastReading; });
        const auto kiln = m_disk.addKiln("Heron");
        test::PastFiring firing;
        firing.began = m_began;
        firing.probe = m_disk.addProbe(kiln, "spyhole side");
        firing.curve = curve;
        firing.live = true;
        m_disk.addFiring(kiln, firing);
        m_disk.clock().set(m_lastReading);
        EXPECT_TRUE(m_disk->resume().empty());
    }
    FiringSession& session() { return *m_disk->sessions().front(); }

    static inline const Instant m_began = test::noonOfMarch(27);
    static inline const Instant m_lastReading = m_began + std::chrono::minutes(630);
    test::NotebookOnDisk m_disk;
    Theme m_theme;
};

TEST_F(SpyholeOfAFiring, TellsTheSessionsForecastAndWritesIntoIt) {
    ASSERT_TRUE(session().forecast());
    SpyholePage page(session(), m_disk->preferences(), m_theme);
    test::present(page);
    page.begin();
    const auto before = session().record().looks.size();
    QSignalSpy finished(&page, &SpyholePage::finished);
    test::type(QStringLiteral("10 1"));
    EXPECT_TRUE(page.model().previewWords().startsWith(QStringLiteral("With this look: cone ")))
        << qPrintable(page.model().previewWords());
    test::press(Qt::Key_Return);
    ASSERT_EQ(session().record().looks.size(), before + 1);
    EXPECT_EQ(session().record().looks.back().cone, "10");
    EXPECT_EQ(session().record().looks.back().at, m_lastReading);
    EXPECT_EQ(finished.count(), 1);
    EXPECT_DOUBLE_EQ(page.model().drawing().cones[2].hour, 1) << "the page knows the new look";
}

TEST_F(SpyholeOfAFiring, FollowsLinesThatAreWrittenElsewhere) {
    SpyholePage page(session(), m_disk->preferences(), m_theme);
    test::present(page);
    const auto pack = session().record().packs.front().id;
    ASSERT_TRUE(session().firing().writeLook(pack, m_lastReading, "10", 2).ok());
    EXPECT_DOUBLE_EQ(page.model().drawing().cones[2].hour, 2);
}

TEST_F(SpyholeOfAFiring, ShowsTimesInThePottersZone) {
    SpyholePage page(session(), m_disk->preferences(), m_theme);
    test::present(page);
    EXPECT_EQ(page.model().atWords(), QStringLiteral("22:30")); // Lisbon, in winter
    ASSERT_TRUE(m_disk->preferences().setZone("Europe/Berlin").ok());
    EXPECT_EQ(page.model().atWords(), QStringLiteral("23:30"));
}

TEST_F(SpyholeOfAFiring, IsUsableByKeyboard) {
    SpyholePage page(session(), m_disk->preferences(), m_theme);
    test::present(page);
    page.begin();
    test::expectUsableByKeyboard(page);
}

TEST_F(SpyholeOfAFiring, KnowsNoFiringConeWithoutAPlan) {
    EXPECT_EQ(firingConeOf(session()), std::nullopt);
}

} // namespace
} // namespace ringhold
