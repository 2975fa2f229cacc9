// Keeps libraries from writing on the terminal of a verb.
#pragma once

namespace ringhold {

/// From now on Qt's messages and spdlog's go nowhere: standard error belongs to the one line of an Error,
/// standard output to the verb.
void silenceLibraries();

} // namespace ringhold
