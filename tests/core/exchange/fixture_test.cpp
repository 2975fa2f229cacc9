// The file forms as they were first handed out: whoever has such a file must always be able to read it, and
// what is written now is still the same to the byte.
#include "core/exchange/csv_export.h"
#include "core/exchange/csv_readings.h"
#include "core/exchange/firing_json.h"
#include "tests/core/exchange/scratch_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

const std::filesystem::path fixtures = test::sourceFolder() / "tests" / "core" / "exchange" / "fixtures";

TEST(ExchangeFixtures, TheFirstFiringIsReadAsEver) {
    const auto record = readFiring(fixtures / "firing_1.json");
    ASSERT_TRUE(record.ok()) << record.error().text();
    EXPECT_EQ(record->firing.title, "Three bottles, first winter firing");
    ASSERT_TRUE(record->firing.plan);
    EXPECT_EQ(record->firing.plan->steps.size(), 5u);
    EXPECT_EQ(record->looks.at(1).hour, 6);
    EXPECT_EQ(record->readings.size(), 6u);
    EXPECT_EQ(formatCsv(*record), ScratchFolder::bytesOf(fixtures / "firing_1.csv"));
}

TEST(ExchangeFixtures, TheSecondFiringIsReadAndWrittenAsEver) {
    const auto record = readFiring(fixtures / "firing_2.json");
    ASSERT_TRUE(record.ok()) << record.error().text();
    EXPECT_EQ(record->firing.title, "Vase day");
    EXPECT_EQ(record->glazeCards.at(0).recipe.at(0).analysis.at(1).oxide, "Na2O");
    EXPECT_EQ(record->photos.at(0).jpeg.size(), 15u);
    EXPECT_EQ(record->alarmEvents.at(1).who, "me");
    EXPECT_EQ(record->sagsSeen.at(0).radius_mm, 11.5);
    EXPECT_EQ(record->logEvents.size(), 0u);
    EXPECT_EQ(formatFiring(*record), ScratchFolder::bytesOf(fixtures / "firing_2.json"));
}

TEST(ExchangeFixtures, ItsReadingsAreReadAsEver) {
    const auto readings = readCsv(fixtures / "firing_1.csv");
    ASSERT_TRUE(readings.ok()) << readings.error().text();
    ASSERT_EQ(readings->channels.size(), 3u);
    EXPECT_EQ(readings->control().label, "middle");
    EXPECT_EQ(readings->control().values.size(), 3u);
    EXPECT_EQ(readings->channels[1].quantity, Quantity::lineVolts);
    EXPECT_EQ(readings->channels[2].label, "by hand");
    EXPECT_EQ(readings->channels[2].values.at(0).value, 1262);
    EXPECT_EQ(readings->rows, 4u);
}

} // namespace
} // namespace ringhold
