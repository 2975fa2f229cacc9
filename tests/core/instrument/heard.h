// A listener that remembers what it heard.
#pragma once

#include "core/instrument/instrument.h"

#include <functional>
#include <string>
#include <vector>

namespace ringhold {

class Heard final : public InstrumentListener {
  public:
    void onSample(const Sample& sample) override {
        samples.push_back(sample);
        if (atEach)
            atEach(sample);
    }
    void onLine(const std::string& line, bool understood) override {
        lines.push_back(line);
        understoodLines += understood ? 1 : 0;
    }
    void onLink(LinkState state, const std::string&) override { links.push_back(state); }

    std::vector<Sample> samples;
    std::vector<std::string> lines;
    std::size_t understoodLines = 0;
    std::vector<LinkState> links;
    std::function<void(const Sample&)> atEach;
};

} // namespace ringhold
