#include "core/instrument/line_format.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using Parameters = std::map<std::string, std::string>;

TEST(LineFormat, TakesItsOwnParametersAndLeavesTheOthers) {
    Parameters parameters{
        {"unit", "F"}, {"decimal", "comma"}, {"type", "s"}, {"cold", "22.5"}, {"baud", "9600"}};
    const auto format = takeLineFormat(parameters);
    ASSERT_TRUE(format.ok());
    EXPECT_EQ(format->bareUnit, BareUnit::fahrenheit);
    EXPECT_EQ(format->decimalMark, DecimalMark::comma);
    EXPECT_EQ(format->thermocouple, ThermocoupleType::S);
    EXPECT_EQ(format->coldJunction.celsius(), 22.5);
    EXPECT_EQ(parameters, (Parameters{{"baud", "9600"}}));
}

TEST(LineFormat, IsPlainWithoutParameters) {
    Parameters none;
    const auto format = takeLineFormat(none);
    ASSERT_TRUE(format.ok());
    EXPECT_EQ(format->bareUnit, BareUnit::celsius);
    EXPECT_EQ(format->decimalMark, DecimalMark::automatic);
    EXPECT_FALSE(format->thermocouple);
}

class BadLineFormat : public testing::TestWithParam<Parameters> {};

TEST_P(BadLineFormat, IsRefusedByName) {
    Parameters parameters = GetParam();
    const auto format = takeLineFormat(parameters);
    ASSERT_FALSE(format.ok());
    EXPECT_EQ(format.error().kind, ErrorKind::badInput);
    EXPECT_NE(format.error().text().find(GetParam().begin()->first), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(LineFormat, BadLineFormat,
                         testing::Values(Parameters{{"unit", "K"}}, Parameters{{"unit", ""}},
                                         Parameters{{"decimal", ";"}}, Parameters{{"type", "Q"}},
                                         Parameters{{"type", "KK"}}, Parameters{{"cold", "warm"}},
                                         Parameters{{"cold", "22C"}}, Parameters{{"cold", "nan"}},
                                         Parameters{{"cold", "500"}}, Parameters{{"cold", ""}}));

} // namespace
} // namespace ringhold
