// Runs the real program, as a shell would, on a computer without a display.
#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace ringhold {

/// What one run left behind.
struct Ran {
    int status = -1; ///< exit status; -1 when it crashed or had to be killed
    std::string out;
    std::string err;

    long errorLines() const;
    /// The JSON object that it printed; discarded when it is none.
    nlohmann::json json() const { return nlohmann::json::parse(out, nullptr, false); }
};

/// Waits for the end, a minute at most. Output goes to `outputTo` instead of `out` if given.
Ran ringholdRuns(const std::vector<std::string>& arguments, const std::string& outputTo = {});

} // namespace ringhold
