#include "tests/ui/plan/plan_book.h"
#include "ui/plan/plan_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

namespace ringhold {
namespace {

class PlanModelTest : public testing::Test {
  protected:
    PlanModelTest() { m_model.setPlan(examplePlans().front().plan); }

    QModelIndex at(int row, StepColumn column) const { return m_model.index(row, static_cast<int>(column)); }
    QString shown(int row, StepColumn column) const { return at(row, column).data().toString(); }
    bool type(int row, StepColumn column, const QString& text) {
        return m_model.setData(at(row, column), text);
    }
    QString fault(int row, StepColumn column) const {
        return at(row, column).data(PlanModel::FaultRole).toString();
    }
    std::string text() const { return formatPlan(m_model.plan()); }
    const Step& step(std::size_t row) const { return m_model.plan().steps[row]; }

    test::PlanBook m_book;
    Preferences& m_preferences = m_book.preferences();
    PlanModel m_model{m_preferences};
    QAbstractItemModelTester m_tester{&m_model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

// The first example: climb, climb, cone wait, drop, hold, rings, cool.
constexpr int climbRow = 0, waitRow = 2, dropRow = 3, holdRow = 4, ringsRow = 5;

TEST_F(PlanModelTest, ShowsEachStepInItsColumns) {
    ASSERT_EQ(m_model.rowCount(), 7);
    using enum StepColumn;
    EXPECT_EQ(shown(climbRow, kind), QStringLiteral("climb"));
    EXPECT_EQ(shown(climbRow, temperature), QStringLiteral("600"));
    EXPECT_EQ(shown(climbRow, rate), QStringLiteral("150"));
    EXPECT_EQ(shown(climbRow, time), QString());
    EXPECT_EQ(shown(waitRow, kind), QStringLiteral("cone wait"));
    EXPECT_EQ(shown(waitRow, which), QStringLiteral("cone 9"));
    EXPECT_EQ(shown(waitRow, temperature), QStringLiteral("1\u202f262"));
    EXPECT_EQ(shown(waitRow, time), QStringLiteral("40 min"));
    EXPECT_EQ(shown(waitRow, limit), QStringLiteral("max 1\u202f285"));
    EXPECT_EQ(shown(dropRow, rate), QStringLiteral("full"));
    EXPECT_EQ(shown(holdRow, time), QStringLiteral("4 h 00"));
    EXPECT_EQ(shown(holdRow, limit), QStringLiteral("±\u202f6"));
    EXPECT_EQ(shown(ringsRow, which), QStringLiteral("3 rings"));
    EXPECT_EQ(shown(ringsRow, limit), QStringLiteral("low 1\u202f040"));
    EXPECT_EQ(shown(ringsRow, lowTime), QStringLiteral("9 min"));
    EXPECT_FALSE(m_model.flags(at(climbRow, time)) & Qt::ItemIsEditable);
    EXPECT_FALSE(m_model.flags(at(climbRow, takes)) & Qt::ItemIsEditable);
    EXPECT_TRUE(m_model.flags(at(climbRow, rate)) & Qt::ItemIsEditable);
}

TEST_F(PlanModelTest, TellsHowWellTheModelFitsACone) {
    const auto tip = [&] { return at(waitRow, StepColumn::which).data(Qt::ToolTipRole).toString(); };
    EXPECT_TRUE(tip().startsWith(QStringLiteral("Cone 9: the model is within "))) << tip().toStdString();
    EXPECT_EQ(at(climbRow, StepColumn::temperature).data(Qt::ToolTipRole).toString(), QString());
    m_model.setConeType(ConeType::largeIronFree);
    EXPECT_FALSE(tip().contains(QStringLiteral("within"))) << tip().toStdString();
}

TEST_F(PlanModelTest, ShowsTheChosenUnit) {
    QSignalSpy changes(&m_model, &PlanModel::dataChanged);
    QSignalSpy headers(&m_model, &PlanModel::headerDataChanged);
    ASSERT_TRUE(m_preferences.setUnit(TemperatureUnit::fahrenheit));
    EXPECT_EQ(shown(waitRow, StepColumn::temperature), QStringLiteral("2\u202f303.6"));
    EXPECT_EQ(shown(climbRow, StepColumn::rate), QStringLiteral("270"));
    EXPECT_EQ(m_model.headerData(2, Qt::Horizontal).toString(), QStringLiteral("°F"));
    EXPECT_EQ(changes.count(), 1);
    EXPECT_EQ(headers.count(), 1);
}

TEST_F(PlanModelTest, KeepsUntouchedValuesToTheLastBit) {
    const double odd_C = 1085.123456789;
    Plan plan{"odd",
              {Hold{Temperature::fromCelsius(odd_C), std::chrono::milliseconds(754'321),
                    TemperatureDifference::fromCelsius(6.04)}}};
    m_model.setPlan(plan);
    const auto before = text();
    for (const auto unit : {TemperatureUnit::fahrenheit, TemperatureUnit::celsius}) {
        ASSERT_TRUE(m_preferences.setUnit(unit));
        for (int column = 0; column < stepColumns; ++column) {
            const auto cell = m_model.index(0, column);
            if (m_model.flags(cell) & Qt::ItemIsEditable) {
                EXPECT_TRUE(m_model.setData(cell, cell.data(Qt::EditRole)));
            }
        }
        EXPECT_EQ(text(), before);
    }
    EXPECT_EQ(m_model.undoStack().count(), 0);
    // Changing one value leaves the others.
    ASSERT_TRUE(m_preferences.setUnit(TemperatureUnit::fahrenheit));
    EXPECT_TRUE(type(0, StepColumn::limit, QStringLiteral("9")));
    EXPECT_EQ(std::get<Hold>(step(0)).at.celsius(), odd_C);
    EXPECT_DOUBLE_EQ(std::get<Hold>(step(0)).band.celsius(), 5);
}

struct Edit {
    int row;
    StepColumn column;
    const char* typed;
    const char* shown;
};

TEST_F(PlanModelTest, TakesWhatIsTypedAndUndoesIt) {
    const Edit edits[] = {{climbRow, StepColumn::temperature, "650", "650"},
                          {climbRow, StepColumn::rate, "180 C/h", "180"},
                          {waitRow, StepColumn::which, "cone 10", "cone 10"},
                          {waitRow, StepColumn::limit, "1290", "max 1\u202f290"},
                          {dropRow, StepColumn::rate, "200", "200"},
                          {holdRow, StepColumn::time, "3:30", "3 h 30"},
                          {ringsRow, StepColumn::which, "5", "5 rings"},
                          {ringsRow, StepColumn::lowTime, "7.5", "7.5 min"}};
    for (const auto& edit : edits) {
        const auto before = text();
        const QString shownBefore = shown(edit.row, edit.column);
        QSignalSpy changes(&m_model, &PlanModel::planChanged);
        EXPECT_TRUE(type(edit.row, edit.column, QString::fromUtf8(edit.typed)));
        EXPECT_EQ(shown(edit.row, edit.column), QString::fromUtf8(edit.shown));
        EXPECT_EQ(changes.count(), 1);
        const auto after = text();
        EXPECT_NE(after, before);
        m_model.undoStack().undo();
        EXPECT_EQ(text(), before);
        EXPECT_EQ(shown(edit.row, edit.column), shownBefore);
        m_model.undoStack().redo();
        EXPECT_EQ(text(), after);
    }
    EXPECT_EQ(m_model.undoStack().count(), static_cast<int>(std::size(edits)));
}

TEST_F(PlanModelTest, GivesAFallItsOwnPaceBack) {
    ASSERT_TRUE(type(dropRow, StepColumn::rate, QStringLiteral("200")));
    EXPECT_TRUE(std::get<Drop>(step(dropRow)).rate);
    ASSERT_TRUE(type(dropRow, StepColumn::rate, QStringLiteral("full")));
    EXPECT_FALSE(std::get<Drop>(step(dropRow)).rate);
}

TEST_F(PlanModelTest, LeavesNoTraceOfWhatChangesNothing) {
    m_model.moveStep(2, 2);
    m_model.moveStep(2, 99);
    m_model.removeStep(-1);
    m_model.removeStep(7);
    m_model.setKind(0, StepKind::climb);
    m_model.rename(QString::fromStdString(m_model.plan().name));
    m_model.rename(QStringLiteral("  "));
    EXPECT_TRUE(type(waitRow, StepColumn::temperature, QStringLiteral("1 262.0 °C")));
    EXPECT_EQ(m_model.undoStack().count(), 0);
    EXPECT_EQ(text(), formatPlan(examplePlans().front().plan));
}

TEST_F(PlanModelTest, SaysWhatItDoesNotUnderstand) {
    QSignalSpy refusals(&m_model, &PlanModel::refused);
    EXPECT_FALSE(type(waitRow, StepColumn::temperature, QStringLiteral("hot")));
    ASSERT_EQ(refusals.count(), 1);
    EXPECT_EQ(refusals[0][0].toString(),
              QStringLiteral("Step 3, set point: “hot” is not understood. It stays 1\u202f262\u202f°C."));
    EXPECT_EQ(m_model.undoStack().count(), 0);
}

TEST_F(PlanModelTest, AddsRemovesMovesAndChangesSteps) {
    const auto original = text();
    m_model.addStep(StepKind::hold, 1);
    ASSERT_EQ(m_model.rowCount(), 8);
    EXPECT_EQ(std::get<Hold>(step(1)).at.celsius(), 600); // where the climb before it ends
    m_model.moveStep(1, 3);
    EXPECT_EQ(kindOf(step(3)), StepKind::hold);
    m_model.moveStep(3, 0);
    EXPECT_EQ(kindOf(step(0)), StepKind::hold);
    m_model.removeStep(0);
    EXPECT_EQ(text(), original);
    m_model.setKind(holdRow, StepKind::rings);
    EXPECT_EQ(std::get<Rings>(step(holdRow)).high.celsius(), 1085);
    EXPECT_EQ(inMinutes(std::get<Rings>(step(holdRow)).highDwell), 240);
    m_model.rename(QStringLiteral("Another"));
    EXPECT_EQ(m_model.plan().name, "Another");
    while (m_model.undoStack().canUndo())
        m_model.undoStack().undo();
    EXPECT_EQ(text(), original);
    while (m_model.undoStack().canRedo())
        m_model.undoStack().redo();
    EXPECT_EQ(m_model.plan().name, "Another");
    EXPECT_EQ(kindOf(step(holdRow)), StepKind::rings);
}

TEST_F(PlanModelTest, BuildsAPlanFromNothing) {
    m_model.setPlan({"new", {}});
    EXPECT_FALSE(m_model.isSound());
    EXPECT_EQ(withItsStep(m_model.faults().at(0)), QStringLiteral("The plan has no step yet."));
    for (const auto kind : {StepKind::climb, StepKind::climb, StepKind::coneWait, StepKind::drop,
                            StepKind::hold, StepKind::rings, StepKind::cool})
        m_model.addStep(kind, m_model.rowCount());
    EXPECT_TRUE(m_model.isSound());
    EXPECT_TRUE(m_model.faults().empty());
}

TEST_F(PlanModelTest, MakesAnyKindOfAnyOther) {
    for (int from = 0; from < stepKinds; ++from) {
        for (int to = 0; to < stepKinds; ++to) {
            m_model.setPlan({"x", {usualStep(static_cast<StepKind>(from), Temperature::fromCelsius(1100))}});
            EXPECT_TRUE(m_model.setData(at(0, StepColumn::kind), to));
            EXPECT_EQ(kindOf(step(0)), static_cast<StepKind>(to));
            EXPECT_EQ(
                endOf(m_model.plan(), 1),
                endOf({"", {usualStep(static_cast<StepKind>(from), Temperature::fromCelsius(1100))}}, 1));
        }
    }
    EXPECT_FALSE(m_model.setData(at(0, StepColumn::kind), 6));
}

TEST_F(PlanModelTest, TellsFaultsWhereTheyAre) {
    ASSERT_TRUE(type(1, StepColumn::temperature, QStringLiteral("500")));
    EXPECT_EQ(
        fault(1, StepColumn::temperature),
        QStringLiteral("temperature: below the 600\u202f°C that the kiln has by then; this step goes up"));
    EXPECT_EQ(fault(1, StepColumn::rate), QString());
    EXPECT_FALSE(m_model.isSound());
    EXPECT_TRUE(at(1, StepColumn::temperature)
                    .data(Qt::AccessibleTextRole)
                    .toString()
                    .startsWith(QStringLiteral("temperature 500\u202f°C; wrong: ")));
    ASSERT_TRUE(m_preferences.setUnit(TemperatureUnit::fahrenheit));
    EXPECT_TRUE(fault(1, StepColumn::temperature).contains(QStringLiteral("1\u202f112\u202f°F")));
    m_model.undoStack().undo();
    EXPECT_TRUE(m_model.isSound());
}

struct FaultCase {
    int row;
    StepColumn column;
    const char* typed;
    const char* words;
};

TEST_F(PlanModelTest, TellsEveryKindOfFault) {
    const FaultCase cases[] = {
        {climbRow, StepColumn::temperature, "1500",
         "temperature: must be from 0\u202f°C to 1\u202f400\u202f°C"},
        {climbRow, StepColumn::rate, "0", "rate: must be above 0"},
        {climbRow, StepColumn::rate, "5000", "rate: must be from 0.1\u202f°C/h to 3\u202f000\u202f°C/h"},
        {waitRow, StepColumn::which, "nine", "cone: must be a cone's number, such as 9, 010 or 5.5"},
        {waitRow, StepColumn::limit, "1000", "ceiling: must be at least the set point"},
        {dropRow, StepColumn::temperature, "1300",
         "temperature: above the 1\u202f285\u202f°C that the kiln has by then; this step goes down"},
        {holdRow, StepColumn::limit, "101", "band: must be at most 100\u202f°C"},
        {holdRow, StepColumn::time, "200 h", "time: must be at most 168 h 00"},
        {ringsRow, StepColumn::which, "0", "number of rings: must be from 1 to 50"},
        {ringsRow, StepColumn::temperature, "1000", "high: must be above the low"}};
    for (const auto& tested : cases) {
        ASSERT_TRUE(type(tested.row, tested.column, QString::fromUtf8(tested.typed)));
        EXPECT_EQ(fault(tested.row, tested.column), QString::fromUtf8(tested.words));
        EXPECT_FALSE(m_model.isSound());
        m_model.undoStack().undo();
        EXPECT_TRUE(m_model.faults().empty());
    }
}

TEST_F(PlanModelTest, WarnsOfAConeThatTheChartDoesNotHave) {
    ASSERT_TRUE(type(waitRow, StepColumn::which, QStringLiteral("99")));
    EXPECT_TRUE(fault(waitRow, StepColumn::which).contains(QStringLiteral("no self-supporting cone 99")));
    EXPECT_TRUE(m_model.isSound());
}

TEST_F(PlanModelTest, ForgetsDurationsWhenThePlanChanges) {
    m_model.setDurations(std::vector<Duration>(7, std::chrono::minutes(90)));
    EXPECT_EQ(shown(0, StepColumn::takes), QStringLiteral("1 h 30"));
    m_model.removeStep(0);
    EXPECT_EQ(shown(0, StepColumn::takes), QString());
}

TEST_F(PlanModelTest, NamesItsColumnsAndCells) {
    for (int column = 0; column < stepColumns; ++column) {
        EXPECT_FALSE(m_model.headerData(column, Qt::Horizontal).toString().isEmpty());
        EXPECT_GT(m_model.headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString().size(), 20);
    }
    EXPECT_EQ(m_model.headerData(0, Qt::Vertical).toInt(), 1);
    EXPECT_EQ(at(waitRow, StepColumn::limit).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("ceiling 1\u202f285\u202f°C"));
}

} // namespace
} // namespace ringhold
