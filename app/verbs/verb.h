// One verb of the command line.
#pragma once

#include "core/base/result.h"

#include <CLI/App.hpp>

#include <iosfwd>
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
    /// Everything for people or programs goes to `out`; nothing is written to standard error.
    virtual Status run(std::ostream& out) = 0;
};

/// Every verb, in the order of the help text.
std::vector<std::unique_ptr<Verb>> allVerbs();

} // namespace ringhold
