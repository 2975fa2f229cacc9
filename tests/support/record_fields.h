// The fields of every record as a tuple, to compare them one by one. They are taken apart by structured
// bindings, so that a field added to a record does not compile here until it is compared too.
#pragma once

#include "core/firing/firing_record.h"
#include "core/plan/plan_file.h"

#include <gtest/gtest.h>

#include <string>
#include <tuple>

namespace ringhold::test {

inline auto fields(const Kiln& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8, f9] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8, f9);
}
inline auto fields(const Probe& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const Channel& r) {
    const auto& [f1, f2, f3, f4, f5] = r;
    return std::tie(f1, f2, f3, f4, f5);
}
inline auto fields(const Reading& r) {
    const auto& [f1, f2, f3, f4, f5] = r;
    return std::tie(f1, f2, f3, f4, f5);
}
inline auto fields(const Pack& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8);
}
inline auto fields(const Look& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const Setting& r) {
    const auto& [f1, f2, f3, f4, f5, f6] = r;
    return std::tie(f1, f2, f3, f4, f5, f6);
}
inline auto fields(const Note& r) {
    const auto& [f1, f2, f3, f4, f5] = r;
    return std::tie(f1, f2, f3, f4, f5);
}
inline auto fields(const Piece& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11);
}
inline auto fields(const Outcome& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12, f13, f14, f15, f16] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12, f13, f14, f15, f16);
}
inline auto fields(const FiledOffset& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const AlarmEvent& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const StepCorrection& r) {
    const auto& [f1, f2, f3, f4, f5] = r;
    return std::tie(f1, f2, f3, f4, f5);
}
inline auto fields(const MeterStand& r) {
    const auto& [f1, f2, f3, f4, f5, f6] = r;
    return std::tie(f1, f2, f3, f4, f5, f6);
}
inline auto fields(const LogEvent& r) {
    const auto& [f1, f2, f3, f4] = r;
    return std::tie(f1, f2, f3, f4);
}
inline auto fields(const Photo& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const PhotoMeasure& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7);
}
inline auto fields(const RingRadius& r) {
    const auto& [f1, f2, f3, f4] = r;
    return std::tie(f1, f2, f3, f4);
}
inline auto fields(const SagSeen& r) {
    const auto& [f1, f2, f3, f4] = r;
    return std::tie(f1, f2, f3, f4);
}
inline auto fields(const HabitBand& r) {
    const auto& [f1, f2, f3] = r;
    return std::tie(f1, f2, f3);
}
inline auto fields(const OxidePercent& r) {
    const auto& [f1, f2] = r;
    return std::tie(f1, f2);
}
inline auto fields(const RecipeLine& r) {
    const auto& [f1, f2, f3, f4, f5, f6] = r;
    return std::tie(f1, f2, f3, f4, f5, f6);
}
inline auto fields(const GlazeCard& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12);
}
inline auto fields(const FiringRecord& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12, f13, f14, f15, f16, f17, f18, f19, f20,
                 f21] = r;
    return std::tie(f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12, f13, f14, f15, f16, f17, f18, f19, f20,
                    f21);
}
/// The plan as its text.
inline auto fields(const Firing& r) {
    const auto& [f1, f2, f3, f4, f5, f6, f7] = r;
    return std::tuple(f1, f2, f3, f4, f5, f6 ? formatPlan(*f6) : std::string(), f7);
}

template <class Record>
void expectSame(const Record& found, const Record& wanted, const std::string& what) {
    EXPECT_TRUE(fields(found) == fields(wanted)) << what;
}

template <class Record>
void expectSame(const std::vector<Record>& found, const std::vector<Record>& wanted,
                const std::string& what = "record") {
    ASSERT_EQ(found.size(), wanted.size()) << what;
    for (std::size_t i = 0; i < found.size(); ++i)
        expectSame(found[i], wanted[i], what + " " + std::to_string(i));
}

/// Runs the call on the members of both, pair by pair, with their place in the record.
template <class Record, class Call>
void eachPair(const Record& a, const Record& b, const Call& call) {
    const auto of = fields(a);
    const auto with = fields(b);
    [&]<std::size_t... i>(std::index_sequence<i...>) {
        (call(std::get<i>(of), std::get<i>(with), "member " + std::to_string(i + 1)), ...);
    }
    (std::make_index_sequence<std::tuple_size_v<decltype(of)>>());
}

inline void expectSame(const FiringRecord& found, const FiringRecord& wanted) {
    eachPair(found, wanted, [](const auto& a, const auto& b, const std::string& place) {
        expectSame(a, b, "firing record's " + place);
    });
}

/// Fails for a field that has its first value in all of these records: a test with them would not notice its
/// loss.
template <class Record>
void expectNoFieldUnset(const std::vector<Record>& records, const std::string& what) {
    ASSERT_FALSE(records.empty()) << what;
    const Record unset{};
    std::vector<bool> set(std::tuple_size_v<decltype(fields(unset))>);
    for (const auto& record : records) {
        std::size_t i = 0;
        eachPair(record, unset, [&](const auto& a, const auto& b, const std::string&) {
            if (!(a == b))
                set[i] = true;
            ++i;
        });
    }
    for (std::size_t i = 0; i < set.size(); ++i)
        EXPECT_TRUE(set[i]) << what << " leaves field " << i + 1 << " unset";
}

template <class Record>
void expectNoFieldUnset(const Record& record, const std::string& what) {
    expectNoFieldUnset(std::vector<Record>{record}, what);
}

inline void expectNothingUnset(const FiringRecord& record) {
    eachPair(record, record, [](const auto& a, const auto&, const std::string& place) {
        expectNoFieldUnset(a, "firing record's " + place);
    });
}

} // namespace ringhold::test
