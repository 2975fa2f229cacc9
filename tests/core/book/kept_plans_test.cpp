#include "core/book/kept_plans.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_examples.h"
#include "core/plan/plan_file.h"
#include "tests/core/book/sample_firing.h"

#include <limits>

namespace ringhold {
namespace {

using namespace test;

std::vector<std::string> texts(std::span<const Plan> plans) {
    std::vector<std::string> all;
    for (const auto& plan : plans)
        all.push_back(formatPlan(plan));
    return all;
}

class KeptPlans : public testing::Test {
  protected:
    BookFolder m_folder;
    Book m_book = bookAt(m_folder / "a.ringhold");
    BookReader m_reader{m_book};
    BookWriter m_writer{m_book};
};

TEST_F(KeptPlans, AreNoneInANewBook) {
    EXPECT_TRUE(good(keptPlans(m_reader)).empty());
}

TEST_F(KeptPlans, ComeBackInTheirOrderToTheLastBit) {
    std::vector<Plan> plans;
    for (const auto& example : examplePlans())
        plans.push_back(example.plan);
    plans.push_back({"odd \"name\",\n\u00e9",
                     {Climb{Temperature::fromFahrenheit(2301.7), Rate::fromFahrenheitPerHour(108.3)}}});
    expectGood(keepPlans(m_writer, plans));
    EXPECT_EQ(texts(good(keptPlans(m_reader))), texts(plans));
    std::swap(plans.front(), plans.back());
    expectGood(keepPlans(m_writer, plans));
    EXPECT_EQ(texts(good(keptPlans(m_reader))), texts(plans));
}

TEST_F(KeptPlans, KeepDraftsWithFaults) {
    const Plan empty{"begun", {}};
    const Plan backwards{"faulty", {Climb{Temperature::fromCelsius(600), Rate::fromCelsiusPerHour(-5)}}};
    ASSERT_FALSE(check(empty));
    ASSERT_FALSE(check(backwards));
    expectGood(keepPlans(m_writer, std::vector{empty, backwards}));
    EXPECT_EQ(texts(good(keptPlans(m_reader))), texts(std::vector{empty, backwards}));
}

TEST_F(KeptPlans, AreNotReplacedByWhatCannotBeReadAgain) {
    expectGood(keepPlans(m_writer, std::vector{Plan{"good", {}}}));
    const Plan endless{"endless",
                       {Drop{Temperature::fromCelsius(std::numeric_limits<double>::infinity()), {}}}};
    const auto status = keepPlans(m_writer, std::vector{endless});
    ASSERT_FALSE(status);
    EXPECT_EQ(status.error().kind, ErrorKind::badInput);
    EXPECT_EQ(good(keptPlans(m_reader)).at(0).name, "good");
}

TEST_F(KeptPlans, TellWhenTheBookHoldsSomethingElse) {
    for (const char* damaged : {"", "no JSON", "{}", "[1]", R"([{"name":"x","steps":[{"fly":{}}]}])"}) {
        expectGood(m_writer.setPreference("plans", damaged));
        const auto plans = keptPlans(m_reader);
        ASSERT_FALSE(plans) << damaged;
        EXPECT_EQ(plans.error().kind, ErrorKind::unreadable) << damaged;
    }
}

} // namespace
} // namespace ringhold
