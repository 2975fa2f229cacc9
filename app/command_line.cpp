#include "app/command_line.h"

#include <CLI/CLI.hpp>

namespace ringhold {

int runCommandLine(int argc, char** argv) {
    CLI::App program("Kiln-side notebook of a crystalline-glaze potter", "ringhold");
    program.set_version_flag("--version", "ringhold " RINGHOLD_VERSION);
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return program.exit(error);
    }
    return 0;
}

} // namespace ringhold
