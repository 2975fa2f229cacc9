#include "app/command_line.h"

#include "app/console.h"
#include "app/quiet.h"
#include "app/verbs/verb.h"
#include "app/window/window_run.h"

#include <CLI/CLI.hpp>

#include <iostream>

namespace ringhold {

namespace {

int exitStatus(ErrorKind kind) {
    return kind == ErrorKind::unwritable || kind == ErrorKind::failed ? 1 : 2;
}

int complain(Console& console, const Error& error) {
    console.complain(error);
    return exitStatus(error.kind);
}

int runVerb(Verb& verb, Console& console) {
    silenceLibraries();
    try {
        if (const Status status = verb.run(console); !status)
            return complain(console, status.error());
    } catch (const std::exception& error) {
        return complain(console, {ErrorKind::failed, error.what()});
    }
    console.out.flush();
    return console.out ? 0 : complain(console, {ErrorKind::unwritable, "standard output cannot be written"});
}

/// CLI11's own words, but for a mistyped verb, which it calls an unexpected argument.
std::string usageText(const CLI::App& program, const CLI::ParseError& error) {
    const auto extras = program.remaining();
    if (program.get_subcommands().empty() && !extras.empty() && extras.front().rfind('-', 0) != 0)
        return "there is no verb \"" + extras.front() + "\"; ringhold --help lists them";
    return error.what();
}

/// Without a verb: the window, on that book or the usual one.
Status showBook(const std::string& book) {
    if (!book.empty())
        return runWindow(book, std::nullopt);
    const auto usual = usualBook();
    return usual ? runWindow(*usual, std::nullopt) : Status(usual.error());
}

} // namespace

int runCommandLine(int argc, char** argv) {
    CLI::App program("Kiln-side notebook of a crystalline-glaze potter", "ringhold");
    program.set_version_flag("--version", "ringhold " RINGHOLD_VERSION);
    Console console(std::cout, std::cerr);
    const auto verbs = allVerbs();
    std::vector<CLI::App*> commands;
    for (const auto& verb : verbs) {
        commands.push_back(program.add_subcommand(verb->name(), verb->summary()));
        verb->declare(*commands.back());
    }
    program.require_subcommand(0, 1);
    std::string book;
    program.add_option("--book", book, "The book to open in the window (the one last used)")
        ->type_name("FILE");
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success))
            return program.exit(error);
        return complain(console, {ErrorKind::badInput, usageText(program, error)});
    }
    for (std::size_t i = 0; i < verbs.size(); ++i)
        if (commands[i]->parsed())
            return runVerb(*verbs[i], console);
    silenceLibraries();
    const Status shown = showBook(book);
    return shown ? 0 : complain(console, shown.error());
}

} // namespace ringhold
