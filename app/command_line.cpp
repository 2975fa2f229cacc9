#include "app/command_line.h"

#include "app/quiet.h"
#include "app/verbs/verb.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <iostream>

namespace ringhold {

namespace {

constexpr int done = 0;
constexpr int failure = 1;
constexpr int badUsage = 2;

int exitStatus(ErrorKind kind) {
    return kind == ErrorKind::unwritable || kind == ErrorKind::failed ? failure : badUsage;
}

/// One line on standard error, whatever the text holds.
int complain(std::string text, int status) {
    std::replace_if(
        text.begin(), text.end(), [](unsigned char c) { return c < 0x20; }, ' ');
    text.erase(text.find_last_not_of(' ') + 1);
    std::cerr << "ringhold: " << text << std::endl;
    return status;
}

int complain(const Error& error) {
    return complain(error.text(), exitStatus(error.kind));
}

int runVerb(Verb& verb) {
    silenceLibraries();
    try {
        if (const Status status = verb.run(std::cout); !status)
            return complain(status.error());
    } catch (const std::exception& error) {
        return complain(error.what(), failure);
    }
    std::cout.flush();
    return std::cout ? done : complain("standard output cannot be written", failure);
}

/// CLI11's own words, but for a mistyped verb, which it calls an unexpected argument.
std::string usageText(const CLI::App& program, const CLI::ParseError& error) {
    const auto extras = program.remaining();
    if (program.get_subcommands().empty() && !extras.empty() && extras.front().rfind('-', 0) != 0)
        return "there is no verb \"" + extras.front() + "\"; ringhold --help lists them";
    return error.what();
}

} // namespace

int runCommandLine(int argc, char** argv) {
    CLI::App program("Kiln-side notebook of a crystalline-glaze potter", "ringhold");
    program.set_version_flag("--version", "ringhold " RINGHOLD_VERSION);
    const auto verbs = allVerbs();
    std::vector<CLI::App*> commands;
    for (const auto& verb : verbs) {
        commands.push_back(program.add_subcommand(verb->name(), verb->summary()));
        verb->declare(*commands.back());
    }
    program.require_subcommand(0, 1);
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success))
            return program.exit(error);
        return complain(usageText(program, error), badUsage);
    }
    for (std::size_t i = 0; i < verbs.size(); ++i)
        if (commands[i]->parsed())
            return runVerb(*verbs[i]);
    return complain("the window is not there yet; ringhold --help lists the verbs", failure);
}

} // namespace ringhold
