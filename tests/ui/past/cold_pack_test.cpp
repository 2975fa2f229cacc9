#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/past/cold_pack_entry.h"
#include "ui/past/firing_view.h"
#include "ui/past/past_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QComboBox>
#include <QPushButton>
#include <QTabWidget>

namespace ringhold::test {
namespace {

class ColdPackTest : public testing::Test {
  protected:
    ColdPackTest() {
        m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        m_book.clock().set(noonOfMarch(3));
    }
    void start(int width = 1180) {
        present(m_page, width, 600);
        m_page.findChild<FiringView*>()->findChild<QTabWidget*>()->setCurrentIndex(1);
        QApplication::processEvents();
    }
    ColdPackEntry& entry() { return *m_page.findChild<ColdPackEntry*>(); }
    void choose(std::size_t cone, double hour) {
        auto* hours = entry().findChildren<QComboBox*>().at(static_cast<qsizetype>(cone));
        hours->setFocus();
        hours->setCurrentIndex(hours->findData(hour));
        Q_EMIT hours->activated(hours->currentIndex());
    }
    QPushButton& writeButton() { return *entry().findChild<QPushButton*>(); }
    std::vector<Look> coldLooks() {
        std::vector<Look> cold;
        for (const auto& look : good(m_book->reader().whole(m_firing)).looks)
            if (look.cold)
                cold.push_back(look);
        return cold;
    }
    std::vector<FiledOffset> filed() { return good(m_book->reader().filedOffsets(m_kiln)); }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_kiln = m_book.addKiln("Heron");
    ProbeId m_probe = m_book.addProbe(m_kiln, "T1");
    FiringId m_firing =
        m_book.addFiring(m_kiln, {.title = "Fern", .began = noonOfMarch(1), .probe = m_probe});
    PastPage m_page{m_book.notebook(), m_theme};
};

TEST_F(ColdPackTest, IsWrittenAndFiledIntoTheOffset) {
    start();
    ASSERT_TRUE(entry().isVisible());
    EXPECT_FALSE(writeButton().isEnabled());
    choose(1, 6);
    choose(2, 1);
    ASSERT_TRUE(writeButton().isEnabled());
    EXPECT_TRUE(filed().empty());
    writeButton().click();
    ASSERT_EQ(coldLooks().size(), 2U);
    const auto looks = coldLooks();
    const auto ten = std::ranges::find(looks, "10", &Look::cone);
    ASSERT_NE(ten, looks.end());
    EXPECT_EQ(ten->hour, 1);
    EXPECT_EQ(ten->at, noonOfMarch(3)) << "the day on which it was read";
    ASSERT_EQ(filed().size(), 1U);
    EXPECT_EQ(filed()[0].probe, m_probe);
    EXPECT_FALSE(writeButton().isEnabled()) << "nothing new is left to write";
    keepScreens(m_page, m_theme, QStringLiteral("cold-pack"));
}

TEST_F(ColdPackTest, ACorrectionStrikesTheOldReadingAndFilesAgain) {
    start();
    choose(2, 1);
    writeButton().click();
    const double before_C = filed()[0].mean.celsius();
    choose(2, 4);
    writeButton().click();
    const auto looks = coldLooks();
    ASSERT_EQ(looks.size(), 2U);
    EXPECT_TRUE(looks[0].struck);
    EXPECT_FALSE(looks[1].struck);
    EXPECT_EQ(looks[1].hour, 4);
    ASSERT_EQ(filed().size(), 1U) << "one for a firing, probe and place";
    EXPECT_NE(filed()[0].mean.celsius(), before_C);
}

TEST_F(ColdPackTest, AFiringThatGoesOnIsNotAskedForIt) {
    m_book.addFiring(m_book.addKiln("Crane"), {.title = "live", .began = noonOfMarch(2), .live = true});
    start();
    EXPECT_FALSE(entry().isVisible());
}

TEST_F(ColdPackTest, HasRoomInTheSmallestWindow) {
    start(950);
    keepScreens(m_page, m_theme, QStringLiteral("cold-pack-small"));
    EXPECT_LE(m_page.minimumSizeHint().width(), 950);
}

} // namespace
} // namespace ringhold::test
