#include "tests/support/notebook_on_disk.h"
#include "ui/past/past_page.h"
#include "ui/report/report_pane.h"
#include "ui/report/report_preview.h"
#include "ui/report/report_view.h"
#include "ui/theme/theme.h"

#include <QFileInfo>
#include <QLabel>
#include <QSignalSpy>
#include <QTabBar>
#include <QTemporaryDir>
#include <QTest>

namespace ringhold::test {
namespace {

class ReportOnThePastPage : public testing::Test {
  protected:
    ReportOnThePastPage() { present(m_page); }
    ReportView& view() { return *m_page.findChild<ReportView*>(); }
    bool written() {
        return QTest::qWaitFor([this] { return !view().busy(); }, 20'000);
    }
    QString title() { return view().pane().preview().document()->title(); }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_heron = m_book.addKiln("Heron");
    FiringId m_fern = m_book.addFiring(m_heron, {.title = "Frost fern", .began = noonOfMarch(1)});
    FiringId m_lichen = m_book.addFiring(m_heron, {.title = "Lichen", .began = noonOfMarch(8)});
    PastPage m_page{m_book.notebook(), m_theme};
};

TEST_F(ReportOnThePastPage, IsReadOnlyWhenItIsLookedAt) {
    EXPECT_FALSE(view().firing());
    m_page.findChild<QTabBar*>()->setCurrentIndex(1);
    EXPECT_EQ(view().firing(), m_lichen);
    ASSERT_TRUE(view().pane().isEmpty()) << "the window went on before the report was there";
    ASSERT_TRUE(written());
    EXPECT_EQ(title(), u"Firing 2, Heron");
}

TEST_F(ReportOnThePastPage, FollowsTheFiringThatIsOpened) {
    m_page.openReport(m_fern);
    m_page.openReport(m_lichen); // before the first is written
    ASSERT_TRUE(written());
    EXPECT_EQ(title(), u"Firing 2, Heron");
    m_page.openReport(m_fern);
    ASSERT_TRUE(written());
    EXPECT_EQ(title(), u"Firing 1, Heron");
}

TEST_F(ReportOnThePastPage, IsSavedByItsKey) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("kept.pdf"));
    m_page.openReport(m_fern);
    ASSERT_TRUE(written());
    view().pane().askForFile = [&](const QString&, auto chosen) { chosen(file); };
    QTest::keyClick(&view().pane().preview(), Qt::Key_S, Qt::ControlModifier);
    // the button is seen to go down before it acts
    EXPECT_TRUE(QTest::qWaitFor([&] { return QFileInfo(file).size() > 10'000; }));
}

TEST_F(ReportOnThePastPage, SaysWhatKeepsItAway) {
    view().show(FiringId{99});
    ASSERT_TRUE(written());
    EXPECT_TRUE(view().pane().isEmpty());
    bool said = false;
    for (const auto* label : view().findChildren<QLabel*>())
        said |= label->isVisibleTo(&view()) && label->text().contains(QStringLiteral("99"));
    EXPECT_TRUE(said);
}

} // namespace
} // namespace ringhold::test
