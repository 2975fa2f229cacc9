// One verb of the command line.
#pragma once

#include "app/console.h"
#include "core/base/result.h"

#include <CLI/App.hpp>

#include <memory>
#include <string>
#include <vector>

namespace ringhold {

/// Declares its options, then does its work. Made anew for each run of the program.
class Verb {
  public:
    virtual ~Verb() = default;
    virtual std::string name() const = 0;
    virtual std::string summary() const = 0;
    /// Adds the options to its own subcommand; they are filled in when the command line is parsed.
    virtual void declare(CLI::App& command) = 0;
    /// Results go to the console; a failure is returned, and complained about by the caller.
    virtual Status run(Console& console) = 0;
};

/// Every verb, in the order of the help text.
std::vector<std::unique_ptr<Verb>> allVerbs();

} // namespace ringhold
