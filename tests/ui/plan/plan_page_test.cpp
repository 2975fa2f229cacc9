#include "tests/support/screens.h"
#include "tests/ui/plan/plan_book.h"
#include "ui/plan/crystal_view.h"
#include "ui/plan/plan_card_window.h"
#include "ui/plan/plan_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QComboBox>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QTableView>
#include <QTest>
#include <QTextDocumentFragment>

namespace ringhold {
namespace {

class PlanPageTest : public testing::Test {
  protected:
    void open(const std::vector<Plan>& plans = {examplePlans().front().plan}) {
        m_book.addHeron();
        m_book.keep(plans);
        m_page = std::make_unique<PlanPage>(m_book.notebook(), m_theme);
        m_page->resize(1220, 640);
        m_page->show();
        m_page->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(m_page.get()));
    }
    template <class Widget>
    Widget* part(const char* name) {
        auto* found = m_page->findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_TRUE(found) << name;
        return found;
    }
    QTableView* table() { return part<QTableView>("planSteps"); }
    QListView* list() { return part<QListView>("planList"); }
    QString labelled(const char* name) {
        auto* label = part<QLabel>(name);
        return label->isHidden() ? QString() : label->text().replace(QChar(0x202f), QLatin1Char(' '));
    }
    QString message() {
        auto* bar = part<QFrame>("planMessage");
        return bar->isHidden() ? QString() : bar->findChild<QLabel*>()->text();
    }
    void goTo(int row, StepColumn column) {
        table()->setFocus();
        table()->setCurrentIndex(table()->model()->index(row, static_cast<int>(column)));
    }
    /// As the potter does: the first key opens the cell.
    void type(int row, StepColumn column, const char* text) {
        goTo(row, column);
        QTest::keyClick(table(), text[0]);
        auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_TRUE(line);
        QTest::keyClicks(line, QString::fromUtf8(text + 1));
        QTest::keyClick(line, Qt::Key_Return);
        QApplication::processEvents(); // the line is taken when its key is done with
    }
    void pick(const char* button, const QString& entry) {
        for (auto* action : part<QPushButton>(button)->menu()->actions()) {
            if (action->text().startsWith(entry)) {
                action->trigger();
                return;
            }
        }
        FAIL() << entry.toStdString();
    }
    QString figures() {
        QStringList words;
        for (const auto* label : part<QFrame>("planFigures")->findChildren<QLabel*>())
            if (!label->isHidden())
                words << QTextDocumentFragment::fromHtml(label->text()).toPlainText();
        return words.join(QLatin1Char(' ')).replace(QChar(0x00a0), QLatin1Char(' '));
    }

    test::PlanBook m_book;
    Theme m_theme;
    std::unique_ptr<PlanPage> m_page;
};

TEST_F(PlanPageTest, BeginsEmptyAndOffersExamples) {
    open({});
    EXPECT_EQ(labelled("planTitle"), QStringLiteral("No plans yet"));
    EXPECT_TRUE(labelled("curveWords").contains(QStringLiteral("New plan")));
    EXPECT_FALSE(m_page->plan());
    EXPECT_FALSE(part<QPushButton>("planCard")->isEnabled());
    EXPECT_FALSE(m_page->showCard());
    pick("newPlan", QStringLiteral("Example: Cone 9"));
    ASSERT_TRUE(m_page->plan());
    EXPECT_EQ(labelled("planTitle"), QStringLiteral("Cone 9, long hold, three rings"));
    ASSERT_EQ(m_book.kept().size(), 1u);
    EXPECT_EQ(formatPlan(m_book.kept()[0]), formatPlan(examplePlans()[0].plan));
    EXPECT_TRUE(part<QPushButton>("planCard")->isEnabled());
}

TEST_F(PlanPageTest, EditsACellByKeysAndKeepsItInTheBook) {
    open();
    type(4, StepColumn::time, "3:30");
    EXPECT_EQ(inMinutes(std::get<Hold>(m_book.kept()[0].steps[4]).length), 210);
    QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(inMinutes(std::get<Hold>(m_book.kept()[0].steps[4]).length), 240);
    QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(inMinutes(std::get<Hold>(m_book.kept()[0].steps[4]).length), 210);
}

TEST_F(PlanPageTest, ShowsAFaultInItsCellAndInWords) {
    open();
    type(1, StepColumn::temperature, "500");
    EXPECT_EQ(
        labelled("planFaults"),
        QStringLiteral("Step 2, temperature: below the 600 °C that the kiln has by then; this step goes up"));
    EXPECT_TRUE(labelled("curveWords").contains(QStringLiteral("no fault")));
    EXPECT_FALSE(part<QPushButton>("planCard")->isEnabled());
    EXPECT_EQ(figures(), QString());
    // A draft with faults is kept as well.
    EXPECT_EQ(std::get<Climb>(m_book.kept()[0].steps[1]).to.celsius(), 500);
    QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(labelled("planFaults"), QString());
    EXPECT_TRUE(part<QPushButton>("planCard")->isEnabled());
}

TEST_F(PlanPageTest, SaysWhatItDoesNotUnderstandAndGoesOn) {
    open();
    type(2, StepColumn::temperature, "x");
    EXPECT_TRUE(message().contains(QStringLiteral("“x” is not understood")));
    QTest::keyClick(table(), Qt::Key_Escape);
    EXPECT_EQ(message(), QString());
    EXPECT_EQ(m_page->plan()->steps.size(), 7u);
}

TEST_F(PlanPageTest, AddsMovesAndRemovesStepsByKeys) {
    open();
    goTo(1, StepColumn::kind);
    pick("addStep", QStringLiteral("hold"));
    EXPECT_EQ(table()->currentIndex().row(), 2);
    EXPECT_EQ(kindOf(m_page->plan()->steps[2]), StepKind::hold);
    QTest::keyClick(table(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(table()->currentIndex().row(), 1);
    EXPECT_EQ(kindOf(m_page->plan()->steps[1]), StepKind::hold);
    QTest::keyClick(table(), Qt::Key_Delete);
    EXPECT_EQ(m_page->plan()->steps.size(), 7u);
    EXPECT_EQ(formatPlan(m_book.kept()[0]), formatPlan(examplePlans()[0].plan));
    // The menu of kinds opens by a key too.
    QTest::keyClick(table(), Qt::Key_Insert);
    auto* menu = part<QPushButton>("addStep")->menu();
    EXPECT_TRUE(menu->isVisible());
    menu->close();
}

TEST_F(PlanPageTest, ChoosesTheKindOfAStepFromAList) {
    open();
    goTo(3, StepColumn::kind);
    QTest::keyClick(table(), Qt::Key_F2);
    auto* kinds = table()->findChild<QComboBox*>();
    ASSERT_TRUE(kinds);
    EXPECT_EQ(kinds->currentText(), QStringLiteral("drop"));
    QTest::keyClick(kinds, Qt::Key_Down);
    QTest::keyClick(kinds, Qt::Key_Down);
    EXPECT_EQ(kindOf(m_page->plan()->steps[3]), StepKind::rings);
}

TEST_F(PlanPageTest, ReckonsLengthEnergyAndCostForTheChosenKiln) {
    open();
    m_page->reckonEnergy();
    EXPECT_TRUE(figures().contains(QStringLiteral("Cone 9 down about"))) << figures().toStdString();
    EXPECT_TRUE(figures().contains(QStringLiteral("a typical kiln scaled to 9 kW")))
        << figures().toStdString();
    EXPECT_TRUE(figures().contains(QStringLiteral("0.25 a kWh")));
    EXPECT_TRUE(labelled("planOffset").contains(QStringLiteral("from 3 firings")));
    auto* kiln = part<QComboBox>("planKiln");
    QTest::keyClick(kiln, Qt::Key_Down);
    m_page->reckonEnergy();
    EXPECT_TRUE(figures().contains(QStringLiteral("a typical kiln of 11 kW")));
    EXPECT_TRUE(labelled("planOffset").contains(QStringLiteral("no firing has told")));
    // The choice is remembered.
    PlanPage again(m_book.notebook(), m_theme);
    EXPECT_EQ(again.findChild<QComboBox*>(QStringLiteral("planKiln"))->currentText(),
              QStringLiteral("a typical kiln"));
}

TEST_F(PlanPageTest, EstimatesTheEnergyWhenTypingPauses) {
    open();
    EXPECT_TRUE(QTest::qWaitFor([this] { return figures().contains(QStringLiteral("kWh")); }));
}

TEST_F(PlanPageTest, MovesAlongTheCurveByKeys) {
    open();
    auto* plot = part<QWidget>("plannedCurve");
    plot->setFocus(Qt::TabFocusReason);
    QTest::keyClick(plot, Qt::Key_Home);
    EXPECT_TRUE(labelled("curveWords").startsWith(QStringLiteral("0 s after the start: 20 °C")))
        << labelled("curveWords").toStdString();
    QTest::keyClick(plot, Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(labelled("curveWords"),
              QStringLiteral("1 h 00 after the start: 170 °C, step 1, climb, going up"));
    QTest::keyClick(plot, Qt::Key_Right);
    EXPECT_TRUE(labelled("curveWords").startsWith(QStringLiteral("1 h 05 ")));
    EXPECT_TRUE(plot->accessibleDescription().contains(QStringLiteral("climb to")));
}

TEST_F(PlanPageTest, PicksAStepInTheCurve) {
    open();
    auto* plot = part<QWidget>("plannedCurve");
    QTest::mouseClick(plot, Qt::LeftButton, {}, QPoint(plot->width() - 40, plot->height() / 2));
    EXPECT_EQ(table()->currentIndex().row(), 6);
    QTest::mouseClick(plot, Qt::LeftButton, {}, QPoint(90, plot->height() / 2));
    EXPECT_EQ(table()->currentIndex().row(), 0);
}

TEST_F(PlanPageTest, ChangesUnitEverywhere) {
    open();
    ASSERT_TRUE(m_book.preferences().setUnit(TemperatureUnit::fahrenheit));
    EXPECT_EQ(table()->model()->headerData(2, Qt::Horizontal).toString(), QStringLiteral("°F"));
    EXPECT_TRUE(labelled("planOffset").contains(QStringLiteral("°F")));
    EXPECT_TRUE(figures().contains(QStringLiteral("from 68 °F")));
    EXPECT_EQ(formatPlan(m_book.kept()[0]), formatPlan(examplePlans()[0].plan));
}

TEST_F(PlanPageTest, RenamesInTheList) {
    open();
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_F2);
    auto* line = list()->findChild<QLineEdit*>();
    ASSERT_TRUE(line);
    line->selectAll();
    QTest::keyClicks(line, QStringLiteral("Vase day"));
    QTest::keyClick(line, Qt::Key_Return);
    QApplication::processEvents();
    EXPECT_EQ(m_book.kept()[0].name, "Vase day");
    EXPECT_EQ(labelled("planTitle"), QStringLiteral("Vase day"));
    QTest::keyClick(m_page.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(m_book.kept()[0].name, "Cone 9, long hold, three rings");
}

TEST_F(PlanPageTest, DoesNotGiveTwoPlansOneName) {
    open({{"one", {}}, {"two", {}}});
    list()->model()->setData(list()->model()->index(1, 0), QStringLiteral("one"));
    EXPECT_TRUE(message().contains(QStringLiteral("called “one” already")));
    EXPECT_EQ(m_book.kept()[1].name, "two");
}

TEST_F(PlanPageTest, RemovesAPlanAndBringsItBack) {
    open({examplePlans()[0].plan, examplePlans()[1].plan});
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_Delete);
    ASSERT_EQ(m_book.kept().size(), 1u);
    EXPECT_EQ(m_book.kept()[0].name, examplePlans()[1].plan.name);
    EXPECT_EQ(m_page->plan()->name, examplePlans()[1].plan.name);
    EXPECT_TRUE(message().contains(QStringLiteral("out of the book")));
    QTest::mouseClick(part<QPushButton>("planMessageAct"), Qt::LeftButton);
    ASSERT_EQ(m_book.kept().size(), 2u);
    EXPECT_EQ(formatPlan(m_book.kept()[0]), formatPlan(examplePlans()[0].plan));
    EXPECT_EQ(m_page->plan()->name, examplePlans()[0].plan.name);
    QTest::keyClick(list(), Qt::Key_Delete);
    QTest::keyClick(list(), Qt::Key_Delete);
    EXPECT_TRUE(m_book.kept().empty());
    EXPECT_FALSE(m_page->plan());
    EXPECT_EQ(labelled("planTitle"), QStringLiteral("No plans yet"));
}

TEST_F(PlanPageTest, CopiesAPlan) {
    open();
    pick("newPlan", QStringLiteral("Copy"));
    ASSERT_EQ(m_book.kept().size(), 2u);
    EXPECT_EQ(m_book.kept()[1].name, "Cone 9, long hold, three rings (2)");
    type(0, StepColumn::temperature, "700");
    EXPECT_EQ(std::get<Climb>(m_book.kept()[1].steps[0]).to.celsius(), 700);
    EXPECT_EQ(std::get<Climb>(m_book.kept()[0].steps[0]).to.celsius(), 600);
}

TEST_F(PlanPageTest, TakesAPlanOutAndInAgainUnchanged) {
    open();
    const auto file = m_book.folder / "out.json";
    m_page->writeOut(QString::fromStdString(file.string()));
    EXPECT_TRUE(message().startsWith(QStringLiteral("Written to ")));
    EXPECT_EQ(test::bytesOf(file), formatPlan(m_book.kept()[0]));
    m_page->bringIn(QString::fromStdString(file.string()));
    ASSERT_EQ(m_book.kept().size(), 2u);
    auto back = m_book.kept()[1];
    EXPECT_EQ(back.name, "Cone 9, long hold, three rings (2)");
    back.name = m_book.kept()[0].name;
    EXPECT_EQ(formatPlan(back), formatPlan(m_book.kept()[0]));
}

TEST_F(PlanPageTest, SaysWhyAFileIsNoPlan) {
    open();
    const auto file = m_book.folder / "bad.json";
    test::write(file, "{\n\"name\": \"x\",\n\"steps\": [{\"fly\": {}}]}");
    m_page->bringIn(QString::fromStdString(file.string()));
    EXPECT_TRUE(message().contains(QStringLiteral("bad.json: step 1: \"fly\" is no step")))
        << message().toStdString();
    m_page->bringIn(QStringLiteral("/nowhere.json"));
    EXPECT_TRUE(message().contains(QStringLiteral("no such file")));
    EXPECT_EQ(m_book.kept().size(), 1u);
    EXPECT_FALSE(QApplication::activeModalWidget());
}

TEST_F(PlanPageTest, DoesNotWriteAFaultyPlanToAFile) {
    open({{"empty", {}}});
    m_page->writeOut(QString::fromStdString((m_book.folder / "out.json").string()));
    EXPECT_TRUE(message().startsWith(QStringLiteral("A plan with faults is not written")));
    EXPECT_FALSE(test::fs::exists(m_book.folder / "out.json"));
}

TEST_F(PlanPageTest, AsksForFilesWithoutStoppingAnything) {
    open();
    QTest::keyClick(m_page.get(), Qt::Key_O, Qt::ControlModifier);
    auto* dialog = m_page->findChild<QFileDialog*>();
    ASSERT_TRUE(dialog);
    EXPECT_FALSE(QApplication::activeModalWidget());
    dialog->reject();
}

TEST_F(PlanPageTest, SaysWhenAChangeIsNotInTheBook) {
    open();
    m_book.hold();
    type(0, StepColumn::temperature, "650");
    EXPECT_TRUE(message().startsWith(QStringLiteral("This change is not in the book: ")));
    m_book.release();
    type(0, StepColumn::rate, "160");
    const auto climb = std::get<Climb>(m_book.kept()[0].steps[0]);
    EXPECT_EQ(climb.to.celsius(), 650); // with the next change that the book takes
    EXPECT_EQ(climb.rate.celsiusPerHour(), 160);
}

TEST_F(PlanPageTest, ShowsTheCard) {
    open();
    QTest::keyClick(m_page.get(), Qt::Key_P, Qt::ControlModifier);
    auto* card = m_page->findChild<PlanCardWindow*>();
    ASSERT_TRUE(card);
    EXPECT_EQ(card->words().title, QStringLiteral("Cone 9, long hold, three rings"));
    EXPECT_TRUE(card->words().subtitle.startsWith(QStringLiteral("Heron · probe control · ")));
}

TEST_F(PlanPageTest, IsReachedByTabAndNamed) {
    open();
    int reached = 0;
    const auto* begin = list();
    list()->setFocus();
    for (auto* at = begin->nextInFocusChain(); at != begin; at = at->nextInFocusChain()) {
        if (!(at->focusPolicy() & Qt::TabFocus) || !at->isVisibleTo(m_page.get()))
            continue;
        ++reached;
        const bool told = !at->accessibleName().isEmpty() || qobject_cast<QPushButton*>(at);
        EXPECT_TRUE(told) << at->metaObject()->className() << at->objectName().toStdString();
    }
    EXPECT_GE(reached, 12);
}

TEST_F(PlanPageTest, FitsASmallWindow) {
    m_theme.wear(*qApp);
    open();
    m_page->reckonEnergy();
    // What is left of 1024 by 640 beside ribbons, strip and writing line.
    EXPECT_LE(m_page->minimumSizeHint().width(), 935);
    EXPECT_LE(m_page->minimumSizeHint().height(), 490);
}

TEST_F(PlanPageTest, DrawsTheCrystalWhereThereIsRoom) {
    open();
    auto* crystal = part<QWidget>("planCrystal");
    EXPECT_TRUE(crystal->isVisible());
    EXPECT_TRUE(crystal->accessibleName().startsWith(QStringLiteral("Crystal about ")));
    const QImage drawn = pictureOf(*crystal, 1);
    EXPECT_NE(drawn.pixelColor(drawn.width() / 2, drawn.width() / 2), drawn.pixelColor(0, 0));
    m_page->resize(935, 490);
    EXPECT_FALSE(crystal->isVisible());
    m_page->resize(1190, 650);
    EXPECT_TRUE(crystal->isVisible());
    type(1, StepColumn::temperature, "500"); // a plan with a fault draws none
    EXPECT_FALSE(crystal->isVisible());
}

TEST(CrystalBar, IsARoundLengthThatFits) {
    EXPECT_EQ(barLength_mm(27), 20);
    EXPECT_EQ(barLength_mm(50), 50);
    EXPECT_EQ(barLength_mm(9.9), 5);
    EXPECT_EQ(barLength_mm(1.2), 1);
}

TEST_F(PlanPageTest, IsPictured) {
    m_theme.wear(*qApp);
    open({examplePlans()[0].plan, examplePlans()[1].plan, examplePlans()[2].plan});
    m_page->reckonEnergy();
    goTo(4, StepColumn::temperature);
    for (const auto& [size, name] :
         {std::pair(QSize(1190, 650), "plan-1280x800"), {QSize(935, 490), "plan-1024x640"}}) {
        m_page->resize(size);
        keepScreens(*m_page, m_theme, QString::fromLatin1(name));
        EXPECT_EQ(m_page->size(), size);
    }
    if (auto* card = m_page->showCard()) {
        keepScreens(*card, m_theme, QStringLiteral("plan-card"));
        card->close();
    }
    m_page->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(m_page.get()));
    type(1, StepColumn::temperature, "500");
    keepScreens(*m_page, m_theme, QStringLiteral("plan-fault"));
}

} // namespace
} // namespace ringhold
