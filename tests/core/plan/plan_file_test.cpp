#include "core/plan/plan_check.h"
#include "core/plan/plan_file.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <limits>
#include <random>

namespace ringhold {
namespace {

constexpr const char* everyStep = R"({
  "name": "Nine, \"slow\" größer",
  "steps": [
    {"climb": {"to_C": 600, "rate_C_per_h": 150}},
    {"hold": {"at_C": 600, "minutes": 12.5, "band_C": 6}},
    {"cone_wait": {"cone": "9", "rate_C_per_h": 60, "set_C": 1262, "ceiling_C": 1285, "longest_soak_min": 40}},
    {"drop": {"to_C": 1085, "rate_C_per_h": null}},
    {"rings": {"count": 3, "low_C": 1040, "low_min": 9, "high_C": 1085, "high_min": 8}},
    {"cool": {"to_C": 600, "rate_C_per_h": 120.25}}
  ]
}
)";

TEST(PlanFile, ReadsEveryStep) {
    const auto plan = parsePlan(everyStep, "plan.json");
    ASSERT_TRUE(plan.ok()) << plan.error().text();
    EXPECT_EQ(plan->name, "Nine, \"slow\" größer");
    ASSERT_EQ(plan->steps.size(), 6u);
    EXPECT_EQ(std::get<Climb>(plan->steps[0]).to.celsius(), 600);
    EXPECT_EQ(std::get<Climb>(plan->steps[0]).rate.celsiusPerHour(), 150);
    const auto& hold = std::get<Hold>(plan->steps[1]);
    EXPECT_EQ(hold.at.celsius(), 600);
    EXPECT_EQ(inSeconds(hold.length), 750);
    EXPECT_EQ(hold.band.celsius(), 6);
    const auto& wait = std::get<ConeWait>(plan->steps[2]);
    EXPECT_EQ(wait.cone, "9");
    EXPECT_EQ(wait.rate.celsiusPerHour(), 60);
    EXPECT_EQ(wait.set.celsius(), 1262);
    EXPECT_EQ(wait.ceiling.celsius(), 1285);
    EXPECT_EQ(inMinutes(wait.longestSoak), 40);
    EXPECT_EQ(std::get<Drop>(plan->steps[3]).to.celsius(), 1085);
    EXPECT_FALSE(std::get<Drop>(plan->steps[3]).rate);
    const auto& rings = std::get<Rings>(plan->steps[4]);
    EXPECT_EQ(rings.count, 3);
    EXPECT_EQ(rings.low.celsius(), 1040);
    EXPECT_EQ(inMinutes(rings.lowDwell), 9);
    EXPECT_EQ(rings.high.celsius(), 1085);
    EXPECT_EQ(inMinutes(rings.highDwell), 8);
    EXPECT_EQ(std::get<Cool>(plan->steps[5]).to.celsius(), 600);
    EXPECT_EQ(std::get<Cool>(plan->steps[5]).rate->celsiusPerHour(), 120.25);
}

TEST(PlanFile, WritesWhatItReads) {
    const auto plan = parsePlan(everyStep, "plan.json");
    ASSERT_TRUE(plan.ok());
    EXPECT_EQ(formatPlan(*plan), R"({
  "name": "Nine, \"slow\" größer",
  "steps": [
    {"climb":{"to_C":600,"rate_C_per_h":150}},
    {"hold":{"at_C":600,"minutes":12.5,"band_C":6}},
    {"cone_wait":{"cone":"9","rate_C_per_h":60,"set_C":1262,"ceiling_C":1285,"longest_soak_min":40}},
    {"drop":{"to_C":1085,"rate_C_per_h":null}},
    {"rings":{"count":3,"low_C":1040,"low_min":9,"high_C":1085,"high_min":8}},
    {"cool":{"to_C":600,"rate_C_per_h":120.25}}
  ]
}
)");
}

/// A plan of every step with values that no decimal fraction hits exactly.
Plan randomPlan(std::mt19937& random) {
    const auto within = [&random](double low, double high) {
        return std::uniform_real_distribution(low, high)(random);
    };
    const auto celsius = [&](double low, double high) { return Temperature::fromCelsius(within(low, high)); };
    const auto rate = [&] { return Rate::fromFahrenheitPerHour(within(10, 900)); };
    const auto time = [&] { return Duration(std::uniform_int_distribution(1, 600'000'000)(random)); };
    const auto rateOrNone = [&] { return within(0, 1) < 0.5 ? std::nullopt : std::optional(rate()); };
    return {"random",
            {Climb{Temperature::fromFahrenheit(within(212, 1100)), rate()},
             Hold{celsius(100, 600), time(), TemperatureDifference::fromFahrenheit(within(1, 20))},
             ConeWait{"010", rate(), celsius(1200, 1250), celsius(1250, 1400), time()},
             Drop{celsius(1050, 1100), rateOrNone()},
             Rings{std::uniform_int_distribution(1, 50)(random), celsius(1000, 1040), time(),
                   celsius(1060, 1100), time()},
             Cool{celsius(0, 600), rateOrNone()}}};
}

/// Compares bit by bit.
struct SameStep {
    const Step& other;
    bool operator()(const Climb& a) const {
        const auto& b = std::get<Climb>(other);
        return a.to == b.to && a.rate == b.rate;
    }
    bool operator()(const Hold& a) const {
        const auto& b = std::get<Hold>(other);
        return a.at == b.at && a.length == b.length && a.band == b.band;
    }
    bool operator()(const ConeWait& a) const {
        const auto& b = std::get<ConeWait>(other);
        return a.cone == b.cone && a.rate == b.rate && a.set == b.set && a.ceiling == b.ceiling &&
               a.longestSoak == b.longestSoak;
    }
    bool operator()(const Drop& a) const {
        const auto& b = std::get<Drop>(other);
        return a.to == b.to && a.rate == b.rate;
    }
    bool operator()(const Rings& a) const {
        const auto& b = std::get<Rings>(other);
        return a.count == b.count && a.low == b.low && a.lowDwell == b.lowDwell && a.high == b.high &&
               a.highDwell == b.highDwell;
    }
    bool operator()(const Cool& a) const {
        const auto& b = std::get<Cool>(other);
        return a.to == b.to && a.rate == b.rate;
    }
};

TEST(PlanFile, ComesBackToTheLastBit) {
    std::mt19937 random(20260301);
    for (int i = 0; i < 500; ++i) {
        const Plan plan = randomPlan(random);
        ASSERT_TRUE(check(plan).ok()) << check(plan).error().text();
        const auto back = parsePlan(formatPlan(plan), "back");
        ASSERT_TRUE(back.ok()) << back.error().text();
        ASSERT_EQ(back->name, plan.name);
        ASSERT_EQ(back->steps.size(), plan.steps.size());
        for (std::size_t s = 0; s < plan.steps.size(); ++s) {
            ASSERT_EQ(back->steps[s].index(), plan.steps[s].index());
            EXPECT_TRUE(std::visit(SameStep{back->steps[s]}, plan.steps[s]))
                << "step " << s << formatPlan(plan);
        }
    }
}

struct BadText {
    const char* name;
    std::string text;
    std::string error; ///< the whole line, the file being "p"
};

/// A plan file whose only step, or steps, these are.
std::string withSteps(const std::string& steps) {
    return R"({"name":"x","steps":[)" + steps + "]}";
}

class BadPlan : public testing::TestWithParam<BadText> {};

TEST_P(BadPlan, IsRefusedInOneClearLine) {
    const auto plan = parsePlan(GetParam().text, "p");
    ASSERT_FALSE(plan.ok());
    EXPECT_EQ(plan.error().kind, ErrorKind::badInput);
    EXPECT_EQ(plan.error().text(), GetParam().error);
    EXPECT_EQ(plan.error().text().find('\n'), std::string::npos);
}

const std::string kinds = "climb, hold, cone_wait, drop, rings or cool";
const std::string goodClimb = R"({"climb":{"to_C":600,"rate_C_per_h":150}})";

INSTANTIATE_TEST_SUITE_P(
    Text, BadPlan,
    testing::Values(
        BadText{"empty", "", "p: the file is empty"}, BadText{"blank", " \n\t\r\n", "p: the file is empty"},
        BadText{"binary",
                std::string("\x7f"
                            "ELF\0\1",
                            6),
                "p: this is not a text file"},
        BadText{"notUtf8", "{\"name\":\"\xff\xfe\"}", R"(p:1: this is not JSON, near: {"name":"??"})"},
        BadText{"csv", "time,probe_C\n0,20\n", R"(p:1: this is not JSON, near: time,probe_C)"},
        BadText{"comma", "{\"name\":\"x\",\n\"steps\":[\n{}\n{}]}", R"(p:4: this is not JSON, near: {}]})"},
        BadText{"cutShort", "{\"name\":\"x\",\n\"steps\":[", "p:2: the JSON text ends too early"},
        BadText{"cutInText", "{\"name\":\"x", "p:1: the JSON text ends too early"},
        BadText{"twoTexts", "{\"name\":\"x\",\"steps\":[]}\n{}", R"(p:2: this is not JSON, near: {})"},
        BadText{"nan", withSteps(R"({"cool":{"to_C":NaN,"rate_C_per_h":null}})"),
                R"(p:1: this is not JSON, near: l":{"to_C":NaN,"rate_C_p)"},
        BadText{"huge",
                withSteps("\n"
                          R"({"cool":{"to_C":1e999,"rate_C_per_h":null}})"),
                R"(p:2: "1e999" is too large a number)"},
        BadText{"twiceAKey", withSteps(R"({"cool":{"to_C":1,"to_C":2,"rate_C_per_h":null}})"),
                R"(p: the key "to_C" stands twice in one place)"}),
    [](const auto& tested) { return tested.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Form, BadPlan,
    testing::Values(
        BadText{"list", "[]", "p: the plan must be an object, not a list"},
        BadText{"noName", R"({"steps":[]})", "p: the plan needs name"},
        BadText{"noSteps", R"({"name":"x"})", "p: the plan needs steps"},
        BadText{"keyTooMany", R"({"name":"x","steps":[],"speed\n":1})",
                R"(p: unknown key "speed\n" in the plan)"},
        BadText{"longKey", R"({"name":"x","steps":[],")" + std::string(5000, 'k') + R"(":1})",
                R"(p: unknown key ")" + std::string(35, 'k') + R"(..." in the plan)"},
        BadText{"nameIsNumber", R"({"name":9,"steps":[]})", "p: name must be a text, not 9"},
        BadText{"stepsIsObject", R"({"name":"x","steps":{}})", "p: steps must be a list, not an object"},
        BadText{"withoutSteps", withSteps(""), "p: a plan needs at least one step"},
        BadText{"stepIsText", withSteps(R"("climb")"),
                "p: step 1: a step is an object with one key: " + kinds},
        BadText{"stepIsEmpty", withSteps("{}"), "p: step 1: a step is an object with one key: " + kinds},
        BadText{"twoInOne", withSteps(R"({"climb":{},"hold":{}})"),
                "p: step 1: a step is an object with one key: " + kinds},
        BadText{"unknownStep", withSteps(goodClimb + R"(,{"soak":{}})"),
                R"(p: step 2: "soak" is no step: )" + kinds},
        BadText{"bodyIsNumber", withSteps(R"({"climb":5})"),
                "p: step 1: climb must be an object, not a number"},
        BadText{"missing", withSteps(R"({"climb":{"to_C":5}})"), "p: step 1: climb needs rate_C_per_h"},
        BadText{"rateLeftOut", withSteps(R"({"drop":{"to_C":5}})"), "p: step 1: drop needs rate_C_per_h"},
        BadText{"unknownKey", withSteps(R"({"climb":{"to_C":5,"rate_C_per_h":5,"to_F":9}})"),
                R"(p: step 1: unknown key "to_F" in climb)"},
        BadText{"textForNumber", withSteps(R"({"climb":{"to_C":"5","rate_C_per_h":5}})"),
                "p: step 1: to_C must be a number, not a text"},
        BadText{"nullRate", withSteps(R"({"climb":{"to_C":5,"rate_C_per_h":null}})"),
                "p: step 1: rate_C_per_h must be a number, not null"},
        BadText{"trueForNumber", withSteps(R"({"hold":{"at_C":5,"minutes":true,"band_C":5}})"),
                "p: step 1: minutes must be a number, not true or false"},
        BadText{
            "coneIsNumber",
            withSteps(
                R"({"cone_wait":{"cone":9,"rate_C_per_h":1,"set_C":1,"ceiling_C":1,"longest_soak_min":1}})"),
            "p: step 1: cone must be a text, not 9"},
        BadText{"halfARing",
                withSteps(R"({"rings":{"count":2.5,"low_C":1,"low_min":1,"high_C":2,"high_min":1}})"),
                "p: step 1: count must be a whole number, not 2.5"},
        BadText{"outOfRange",
                withSteps(goodClimb + "," + goodClimb + R"(,{"climb":{"to_C":700,"rate_C_per_h":0}})"),
                "p: step 3: rate_C_per_h must be above 0"},
        BadText{"endless", withSteps(R"({"hold":{"at_C":5,"minutes":1e300,"band_C":5}})"),
                "p: step 1: minutes must be at most 10080"},
        BadText{"countless",
                withSteps(R"({"rings":{"count":-1e300,"low_C":1,"low_min":1,"high_C":2,"high_min":1}})"),
                "p: step 1: count must be from 1 to 50"}),
    [](const auto& tested) { return tested.param.name; });

/// A folder that goes away with the test.
class PlanOnDisk : public testing::Test {
  protected:
    PlanOnDisk() {
        std::string pattern = (std::filesystem::temp_directory_path() / "plan_XXXXXX").string();
        m_folder = mkdtemp(pattern.data());
    }
    ~PlanOnDisk() override { std::filesystem::remove_all(m_folder); }

    std::filesystem::path file(const std::string& content) const {
        const auto path = m_folder / "plan.json";
        std::ofstream(path, std::ios::binary) << content;
        return path;
    }
    std::filesystem::path m_folder;
};

TEST_F(PlanOnDisk, IsRead) {
    const auto plan = readPlan(file(everyStep));
    ASSERT_TRUE(plan.ok()) << plan.error().text();
    EXPECT_EQ(plan->steps.size(), 6u);
}

TEST_F(PlanOnDisk, MayBeginWithAByteOrderMark) {
    EXPECT_TRUE(readPlan(file(std::string("\xEF\xBB\xBF") + everyStep)).ok());
}

TEST_F(PlanOnDisk, IsRefusedByName) {
    const auto folder = readPlan(m_folder);
    ASSERT_FALSE(folder.ok());
    EXPECT_EQ(folder.error().kind, ErrorKind::badInput);
    EXPECT_EQ(folder.error().text(), m_folder.string() + ": this is a folder, not a plan file");

    const auto missing = readPlan(m_folder / "none.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::notFound);

    const auto path = file("{\n\"name\" 5}");
    const auto broken = readPlan(path);
    ASSERT_FALSE(broken.ok());
    EXPECT_EQ(broken.error().text(), path.string() + ":2: this is not JSON, near: \"name\" 5}");

    EXPECT_EQ(readPlan(file("")).error().what, "the file is empty");
    EXPECT_EQ(readPlan(file(std::string(2'000'000, ' '))).error().what,
              "the file is far too large for a plan");
}

TEST(PlanFile, SurvivesDeepNesting) {
    EXPECT_FALSE(parsePlan(std::string(500'000, '['), "p").ok());
    EXPECT_FALSE(parsePlan(std::string(100'000, '[') + std::string(100'000, ']'), "p").ok());
}

TEST(PlanFile, ReadsADraftThatIsNotYetSound) {
    constexpr const char* draft = R"({"name":"x","steps":[{"climb":{"to_C":600,"rate_C_per_h":0}}]})";
    const auto plan = parsePlanDraft(draft, "x.json");
    ASSERT_TRUE(plan.ok()) << plan.error().text();
    EXPECT_EQ(plan->steps.size(), 1u);
    EXPECT_FALSE(parsePlan(draft, "x.json"));
    EXPECT_TRUE(parsePlanDraft(R"({"name":"x","steps":[]})", "x.json").ok());
    const auto noPlan = parsePlanDraft(R"({"name":"x","steps":[{"climb":{"to_C":600}}]})", "x.json");
    ASSERT_FALSE(noPlan);
    EXPECT_EQ(noPlan.error().text(), "x.json: step 1: climb needs rate_C_per_h");
}

} // namespace
} // namespace ringhold
