#include "core/book/kept_plans.h"
#include "core/book/kiln_care.h"
#include "core/plan/plan_examples.h"
#include "core/plan/plan_file.h"
#include "tests/core/book/book_folder.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/start/begin_page.h"
#include "ui/start/plan_choice.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace Qt::StringLiterals;

Plan waitingFor(const std::string& cone) {
    const auto C = [](double celsius) { return Temperature::fromCelsius(celsius); };
    return {"wait for " + cone,
            {Climb{C(600), Rate::fromCelsiusPerHour(150)},
             ConeWait{cone, Rate::fromCelsiusPerHour(60), C(1200), C(1220), std::chrono::minutes(30)}}};
}

class BeginPageTest : public testing::Test {
  protected:
    void open() {
        m_page = std::make_unique<BeginPage>(m_book.notebook(), m_theme);
        test::present(*m_page, 1180, 640);
    }
    void keep(const std::vector<Plan>& plans) {
        auto writer = m_book->writer();
        ASSERT_TRUE(keepPlans(writer, plans).ok());
    }
    template <class Widget>
    Widget& named(const char* name) {
        for (auto* child : m_page->findChildren<Widget*>())
            if (child->accessibleName() == QLatin1String(name))
                return *child;
        ADD_FAILURE() << name;
        std::abort();
    }
    QComboBox& plans() { return named<QComboBox>("Plan"); }
    /// By keys, as far down as that entry stands.
    void choosePlan(const QString& begins) {
        auto& box = plans();
        box.setFocus();
        QTest::keyClick(&box, Qt::Key_Home);
        for (int i = 0; i < box.count() && !box.currentText().startsWith(begins); ++i)
            QTest::keyClick(&box, Qt::Key_Down);
        EXPECT_TRUE(box.currentText().startsWith(begins)) << box.currentText().toStdString();
    }
    QString cones() { return named<QLineEdit>("Cones: guide, firing, guard").text(); }
    QCheckBox* line(const QString& words) {
        for (auto* box : m_page->findChildren<QCheckBox*>())
            if (box->text() == words)
                return box;
        return nullptr;
    }
    void begin() {
        named<QComboBox>("Kiln").setEditText(u"Heron"_s);
        for (auto* button : m_page->findChildren<QPushButton*>())
            if (button->text() == u"Begin the firing"_s)
                QTest::mouseClick(button, Qt::LeftButton);
    }
    const FiringRecord& begun() { return m_book->sessions().front()->record(); }

    test::NotebookOnDisk m_book;
    Theme m_theme;
    std::unique_ptr<BeginPage> m_page;
};

TEST_F(BeginPageTest, OffersThePottersPlansBeforeTheExamples) {
    keep({waitingFor("6")});
    open();
    EXPECT_EQ(plans().itemText(0), u"no plan"_s);
    EXPECT_EQ(plans().itemText(1), u"wait for 6 · yours"_s);
    EXPECT_EQ(plans().count(), 3 + static_cast<int>(examplePlans().size()));
    begin();
    ASSERT_EQ(m_book->sessions().size(), 1u);
    ASSERT_TRUE(begun().firing.plan);
    EXPECT_EQ(formatPlan(*begun().firing.plan), formatPlan(waitingFor("6")));
}

TEST_F(BeginPageTest, APlanWrittenMeanwhileIsThereAndTheChoiceStays) {
    open();
    choosePlan(u"Cone 10"_s);
    m_page->hide();
    keep({waitingFor("6")});
    m_page->show();
    EXPECT_TRUE(plans().currentText().startsWith(u"Cone 10"_s));
    EXPECT_EQ(plans().itemText(1), u"wait for 6 · yours"_s);
}

TEST_F(BeginPageTest, ThePackFollowsThePlanUntilItsConesAreTyped) {
    keep({waitingFor("10")});
    open();
    EXPECT_EQ(cones(), u"9, 10, 11"_s);
    choosePlan(u"Cone 9"_s);
    EXPECT_EQ(cones(), u"8, 9, 10"_s);
    auto& line = named<QLineEdit>("Cones: guide, firing, guard");
    line.selectAll();
    QTest::keyClicks(&line, u"7 8"_s);
    choosePlan(u"wait for 10"_s);
    EXPECT_EQ(cones(), u"7 8"_s);
}

TEST_F(BeginPageTest, ADraftWithAFaultCannotBeChosen) {
    keep({Plan{"draft", {}}});
    open();
    EXPECT_EQ(plans().itemText(1), u"draft · has a fault"_s);
    plans().setFocus();
    QTest::keyClick(&plans(), Qt::Key_Home);
    QTest::keyClick(&plans(), Qt::Key_Down);
    EXPECT_TRUE(plans().currentText().startsWith(QString::fromStdString(examplePlans()[0].plan.name)));
}

TEST_F(BeginPageTest, TakesAPlanFromAFileOrSaysWhyNot) {
    open();
    auto& choice = *m_page->findChild<PlanChoice*>();
    const test::BookFolder folder;
    const auto file = folder / "plan.json";
    test::write(file, formatPlan(waitingFor("7")));
    ASSERT_TRUE(choice.takeFile(QString::fromStdString(file.string())).ok());
    EXPECT_EQ(choice.currentText(), u"wait for 7 · from a file"_s);
    EXPECT_EQ(formatPlan(*choice.plan()), formatPlan(waitingFor("7")));
    EXPECT_EQ(cones(), u"6, 7, 8"_s);
    test::write(file, "{}");
    EXPECT_FALSE(choice.takeFile(QString::fromStdString(file.string())).ok());
    EXPECT_EQ(choice.currentText(), u"wait for 7 · from a file"_s);
}

TEST_F(BeginPageTest, AKnownProbeIsOfItsType) {
    m_book.addProbe(m_book.addKiln("Heron"), "T1", ThermocoupleType::S);
    Q_EMIT m_book->bookChanged();
    open();
    auto& type = named<QComboBox>("Thermocouple type");
    EXPECT_EQ(named<QComboBox>("Probe").currentText(), u"T1"_s);
    EXPECT_EQ(type.currentText(), u"type S"_s);
    EXPECT_FALSE(type.isEnabled());
    named<QComboBox>("Probe").setEditText(u"T2"_s);
    EXPECT_TRUE(type.isEnabled());
}

TEST_F(BeginPageTest, TypedNamesStayWhenTheBookChanges) {
    open();
    named<QComboBox>("Kiln").setEditText(u"Wren"_s);
    named<QComboBox>("Probe").setEditText(u"back wall"_s);
    Q_EMIT m_book->bookChanged();
    EXPECT_EQ(named<QComboBox>("Kiln").currentText(), u"Wren"_s);
    EXPECT_EQ(named<QComboBox>("Probe").currentText(), u"back wall"_s);
}

TEST_F(BeginPageTest, ThePottersOwnLinesAreGoneThroughToo) {
    ASSERT_TRUE(
        KilnCare(m_book->book()).setChecklist(std::vector{ChecklistItem{{}, 0, "Cat out of the shed"}}).ok());
    open();
    auto* own = line(u"Cat out of the shed"_s);
    ASSERT_TRUE(own);
    QTest::mouseClick(own, Qt::LeftButton, {}, QPoint(8, own->height() / 2));
    EXPECT_TRUE(own->isChecked());
    Q_EMIT m_book->bookChanged();
    ASSERT_TRUE(line(u"Cat out of the shed"_s));
    EXPECT_TRUE(line(u"Cat out of the shed"_s)->isChecked());
    begin();
    EXPECT_FALSE(line(u"Cat out of the shed"_s)->isChecked());
}

TEST_F(BeginPageTest, IsUsedByKeyboardAndPictured) {
    m_theme.wear(*qApp);
    open();
    test::expectUsableByKeyboard(*m_page);
    for (const auto& [size, name] :
         {std::pair(QSize(1190, 690), "begin-1280x800"), {QSize(935, 530), "begin-1024x640"}}) {
        m_page->resize(size);
        keepScreens(*m_page, m_theme, QString::fromLatin1(name));
        EXPECT_EQ(m_page->size(), size);
    }
}

} // namespace
} // namespace ringhold
