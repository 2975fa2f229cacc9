#include "core/instrument/instrument_spec.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using Parameters = std::map<std::string, std::string>;

struct SpecCase {
    const char* text;
    const char* scheme;
    const char* target;
    Parameters parameters;
};

class GoodSpec : public testing::TestWithParam<SpecCase> {};

TEST_P(GoodSpec, IsTakenApart) {
    const auto& c = GetParam();
    const auto spec = parseInstrumentSpec(c.text);
    ASSERT_TRUE(spec.ok()) << spec.error().text();
    EXPECT_EQ(spec->scheme, c.scheme);
    EXPECT_EQ(spec->target, c.target);
    EXPECT_EQ(spec->parameters, c.parameters);
}

INSTANTIATE_TEST_SUITE_P(
    Spec, GoodSpec,
    testing::Values(SpecCase{"serial:/dev/ttyUSB0?baud=9600", "serial", "/dev/ttyUSB0", {{"baud", "9600"}}},
                    SpecCase{"tcp:192.168.1.20:4001", "tcp", "192.168.1.20:4001", {}},
                    SpecCase{"modbus-tcp:kiln.local:502?unit=1&register=0&scale=0.1",
                             "modbus-tcp",
                             "kiln.local:502",
                             {{"unit", "1"}, {"register", "0"}, {"scale", "0.1"}}},
                    SpecCase{"practice:?seed=1&speed=60", "practice", "", {{"seed", "1"}, {"speed", "60"}}},
                    SpecCase{"practice:", "practice", "", {}}, SpecCase{"practice:?", "practice", "", {}},
                    SpecCase{"follow:/home/potter/my log.txt", "follow", "/home/potter/my log.txt", {}},
                    SpecCase{"follow:log?unit=", "follow", "log", {{"unit", ""}}},
                    SpecCase{"replay:a.csv?title=x=y?", "replay", "a.csv", {{"title", "x=y?"}}}));

class BadSpec : public testing::TestWithParam<const char*> {};

TEST_P(BadSpec, IsRefusedInOneLine) {
    const auto spec = parseInstrumentSpec(GetParam());
    ASSERT_FALSE(spec.ok());
    EXPECT_EQ(spec.error().kind, ErrorKind::badInput);
    EXPECT_EQ(spec.error().text().find('\n'), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Spec, BadSpec,
                         testing::Values("", "/dev/ttyUSB0", ":/dev/ttyUSB0", "Serial port:x", "1wire:x",
                                         "-x:y", "serial:x?baud", "serial:x?=9600", "serial:x?a=1&&b=2",
                                         "serial:x?baud=9600&baud=4800"));

} // namespace
} // namespace ringhold
