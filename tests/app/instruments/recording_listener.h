// Keeps what an instrument says, and waits for it.
#pragma once

#include "core/instrument/instrument.h"

#include <QTest>

#include <utility>
#include <vector>

namespace ringhold {

class RecordingListener final : public InstrumentListener {
  public:
    void onSample(const Sample& sample) override { samples.push_back(sample); }
    void onLine(const std::string& line, bool understood) override { lines.emplace_back(line, understood); }
    void onLink(LinkState state, const std::string&) override { links.push_back(state); }

    bool waitForSamples(std::size_t count) {
        return QTest::qWaitFor([&] { return samples.size() >= count; }, 10'000);
    }
    bool waitForLink(LinkState state) {
        return QTest::qWaitFor([&] { return !links.empty() && links.back() == state; }, 10'000);
    }
    std::vector<double> values() const {
        std::vector<double> all;
        for (const auto& sample : samples)
            all.push_back(sample.value.value_or(-999));
        return all;
    }

    std::vector<Sample> samples;
    std::vector<std::pair<std::string, bool>> lines;
    std::vector<LinkState> links;
};

} // namespace ringhold
