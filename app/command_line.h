// The program's command line: one verb, or none for the window.
#pragma once

namespace ringhold {

/// Runs what the arguments ask for. Exit status: 0 done, 1 failed, 2 bad input or usage; one clear line on
/// standard error with 1 and 2.
int runCommandLine(int argc, char** argv);

} // namespace ringhold
