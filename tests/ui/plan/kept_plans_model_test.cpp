#include "tests/ui/plan/plan_book.h"
#include "ui/plan/kept_plans_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

namespace ringhold {
namespace {

class KeptPlansModelTest : public testing::Test {
  protected:
    KeptPlansModelTest() {
        m_book.keep({{"one", {}}, {"two", {}}});
        EXPECT_TRUE(m_model.load());
    }
    QStringList names() const {
        QStringList all;
        for (int row = 0; row < m_model.rowCount(); ++row)
            all << m_model.index(row).data().toString();
        return all;
    }
    QStringList namesInBook() const {
        QStringList all;
        for (const auto& plan : m_book.kept())
            all << QString::fromStdString(plan.name);
        return all;
    }

    test::PlanBook m_book;
    KeptPlansModel m_model{m_book.notebook()};
    QAbstractItemModelTester m_tester{&m_model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(KeptPlansModelTest, WritesEveryChangeToTheBook) {
    EXPECT_EQ(*m_model.insert(1, {"three", {}}), 1);
    const QStringList wanted{QStringLiteral("one"), QStringLiteral("three"), QStringLiteral("two")};
    EXPECT_EQ(names(), wanted);
    EXPECT_EQ(namesInBook(), wanted);
    EXPECT_TRUE(m_model.replace(0, {"uno", {}}));
    EXPECT_TRUE(m_model.remove(2));
    EXPECT_EQ(namesInBook(), names());
    EXPECT_EQ(names(), (QStringList{QStringLiteral("uno"), QStringLiteral("three")}));
}

TEST_F(KeptPlansModelTest, GivesEachPlanANameOfItsOwn) {
    EXPECT_TRUE(m_model.insert(9, {"one", {}}));
    EXPECT_TRUE(m_model.insert(9, {"one", {}}));
    EXPECT_TRUE(m_model.insert(9, {"", {}}));
    EXPECT_EQ(names().mid(2),
              (QStringList{QStringLiteral("one (2)"), QStringLiteral("one (3)"), QStringLiteral("Plan")}));
}

TEST_F(KeptPlansModelTest, OnlyAsksForANewName) {
    QSignalSpy wanted(&m_model, &KeptPlansModel::renameWanted);
    EXPECT_TRUE(m_model.setData(m_model.index(1), QStringLiteral(" zwei ")));
    EXPECT_FALSE(m_model.setData(m_model.index(1), QStringLiteral("  ")));
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted[0][0].toInt(), 1);
    EXPECT_EQ(wanted[0][1].toString(), QStringLiteral("zwei"));
    EXPECT_EQ(names().last(), QStringLiteral("two"));
}

TEST_F(KeptPlansModelTest, WritesNothingOverWhatItCannotRead) {
    auto writer = m_book.notebook().writer();
    ASSERT_TRUE(writer.setPreference("plans", "damaged"));
    EXPECT_FALSE(m_model.load());
    EXPECT_EQ(m_model.rowCount(), 0);
    EXPECT_FALSE(m_model.insert(0, {"new", {}}));
    EXPECT_EQ(*m_book.notebook().reader().preference("plans"), "damaged");
}

TEST_F(KeptPlansModelTest, StaysAsTheBookIsWhenWritingFails) {
    m_book.hold();
    EXPECT_FALSE(m_model.insert(0, {"new", {}}));
    EXPECT_FALSE(m_model.remove(0));
    EXPECT_FALSE(m_model.replace(0, {"uno", {}}));
    EXPECT_EQ(names(), (QStringList{QStringLiteral("one"), QStringLiteral("two")}));
    m_book.release();
    EXPECT_TRUE(m_model.remove(0));
}

} // namespace
} // namespace ringhold
