#include "core/firing/written_meter.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(WrittenMeterTest, IsReadWithAndWithoutItsUnit) {
    struct Case {
        const char* value;
        double stand;
        MeterUnit unit;
    };
    for (const auto& [value, stand, unit] :
         {Case{"41234.5", 41234.5, MeterUnit::cubicMetres},
          Case{"41 234,5 kWh", 41234.5, MeterUnit::kilowattHours},
          Case{"812.3 m³", 812.3, MeterUnit::cubicMetres}, Case{"812 M3", 812, MeterUnit::cubicMetres}}) {
        const auto meter = readMeter({"Meter", value}, MeterUnit::cubicMetres);
        ASSERT_TRUE(meter.ok()) << value;
        EXPECT_EQ(meter->stand, stand) << value;
        EXPECT_EQ(meter->unit, unit) << value;
    }
}

TEST(WrittenMeterTest, SaysWhatAStandIs) {
    for (const char* value : {"", "full", "-3", "12 miles", "1e999", "nan"}) {
        const auto meter = readMeter({"meter", value}, MeterUnit::kilowattHours);
        ASSERT_FALSE(meter.ok()) << value;
        EXPECT_EQ(meter.error().kind, ErrorKind::badInput);
        EXPECT_NE(meter.error().text().find("a number of at least 0"), std::string::npos);
    }
}

TEST(WrittenMeterTest, IsToldFromOtherSettings) {
    EXPECT_TRUE(isMeter({" meter ", "1"}));
    EXPECT_FALSE(isMeter({"damper", "1"}));
}

} // namespace
} // namespace ringhold
