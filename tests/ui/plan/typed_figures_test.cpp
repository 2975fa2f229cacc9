#include "tests/ui/plan/plan_book.h"
#include "ui/plan/typed_figures.h"

namespace ringhold {
namespace {

class TypedFigures : public testing::Test {
  protected:
    test::PlanBook m_book;
    Preferences& m_preferences = m_book.preferences();
};

struct Typed {
    const char16_t* text;
    std::optional<double> value;
};

TEST_F(TypedFigures, ReadTemperaturesAsPeopleWriteThem) {
    const Typed inCelsius[] = {{u"1262", 1262},          {u" 1 262 ", 1262},
                               {u"1\u202f262", 1262},    {u"1262.5", 1262.5},
                               {u"1262,5", 1262.5},      {u"1262 C", 1262},
                               {u"1262 °C", 1262},       {u"2300F", 1260},
                               {u"2300 °f", 1260},       {u"-5", -5},
                               {u"\u22125", -5},         {u"", std::nullopt},
                               {u"hot", std::nullopt},   {u"12 K", std::nullopt},
                               {u"1.2.3", std::nullopt}, {u"1,262", std::nullopt},
                               {u"nan", std::nullopt},   {u"inf", std::nullopt},
                               {u"1e400", std::nullopt}, {u"12 34 x", std::nullopt},
                               {u"1262/h", std::nullopt}};
    for (const auto& [text, value] : inCelsius) {
        const auto read = typedTemperature(text, m_preferences);
        ASSERT_EQ(read.has_value(), value.has_value()) << QString::fromUtf16(text).toStdString();
        if (value) {
            EXPECT_NEAR(read->celsius(), *value, 1e-9);
        }
    }
}

TEST_F(TypedFigures, TakeTheChosenUnitUnlessAnotherIsWritten) {
    ASSERT_TRUE(m_preferences.setUnit(TemperatureUnit::fahrenheit));
    EXPECT_NEAR(typedTemperature(u"2300", m_preferences)->celsius(), 1260, 1e-9);
    EXPECT_NEAR(typedTemperature(u"1260 C", m_preferences)->celsius(), 1260, 1e-9);
    EXPECT_NEAR(typedDifference(u"± 9", m_preferences)->celsius(), 5, 1e-9);
    EXPECT_NEAR(typedDifference(u"9 C", m_preferences)->celsius(), 9, 1e-9);
    EXPECT_NEAR(typedRate(u"270", m_preferences)->celsiusPerHour(), 150, 1e-9);
    EXPECT_NEAR(typedRate(u"270 F/h", m_preferences)->celsiusPerHour(), 150, 1e-9);
    EXPECT_NEAR(typedRate(u"150 °C / h", m_preferences)->celsiusPerHour(), 150, 1e-9);
    EXPECT_EQ(typedForm(Temperature::fromCelsius(1262), m_preferences), QStringLiteral("2303.6"));
    EXPECT_EQ(typedForm(TemperatureDifference::fromCelsius(5), m_preferences), QStringLiteral("9"));
    EXPECT_EQ(typedForm(Rate::fromCelsiusPerHour(150), m_preferences), QStringLiteral("270"));
}

TEST_F(TypedFigures, ReadTimes) {
    const Typed inMinutes_[] = {{u"90", 90},
                                {u"90 min", 90},
                                {u"1.5 h", 90},
                                {u"1,5h", 90},
                                {u"1 h 30", 90},
                                {u"1h30 min", 90},
                                {u"1:30", 90},
                                {u"4 h 00", 240},
                                {u"45 s", 0.75},
                                {u"12.5", 12.5},
                                {u"0", 0},
                                {u"", std::nullopt},
                                {u"soon", std::nullopt},
                                {u"3 days", std::nullopt},
                                {u"h", std::nullopt},
                                {u"1:30:00", std::nullopt},
                                {u"999999999", std::nullopt}};
    for (const auto& [text, minutes] : inMinutes_) {
        const auto read = typedTime(text);
        ASSERT_EQ(read.has_value(), minutes.has_value()) << QString::fromUtf16(text).toStdString();
        if (minutes) {
            EXPECT_NEAR(inMinutes(*read), *minutes, 1e-4);
        }
    }
}

TEST(TypedFiguresForm, ComesBackWhenTyped) {
    for (const double minutes : {0.75, 9.0, 12.5, 59.0, 60.0, 75.5, 240.0, 601.0}) {
        const auto time = durationFromMinutes(minutes);
        EXPECT_EQ(typedTime(typedForm(time)), time) << minutes;
    }
    EXPECT_EQ(typedForm(std::chrono::minutes(240)), QStringLiteral("4 h 00"));
    EXPECT_EQ(typedForm(std::chrono::minutes(9)), QStringLiteral("9 min"));
    EXPECT_EQ(typedForm(std::chrono::seconds(750)), QStringLiteral("12.5 min"));
}

TEST(TypedFiguresForm, GroupsThousandsOfFiguresOnly) {
    EXPECT_EQ(grouped(QStringLiteral("1262.5")), QStringLiteral("1\u202f262.5"));
    EXPECT_EQ(grouped(QStringLiteral("-1262")), QStringLiteral("\u22121\u202f262"));
    EXPECT_EQ(grouped(QStringLiteral("600")), QStringLiteral("600"));
    EXPECT_EQ(grouped(QStringLiteral("full")), QStringLiteral("full"));
    EXPECT_EQ(grouped(QStringLiteral("4 h 00")), QStringLiteral("4 h 00"));
}

} // namespace
} // namespace ringhold
