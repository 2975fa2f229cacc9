// Options that several verbs share.
#pragma once

#include <CLI/App.hpp>

#include <optional>
#include <string>

namespace ringhold {

/// An option that takes a finite number, with a point for its decimals whatever the language of the computer.
CLI::Option* addNumber(CLI::App& command, const std::string& flag, double& value, const std::string& help);
CLI::Option* addNumber(CLI::App& command, const std::string& flag, std::optional<double>& value,
                       const std::string& help);

/// --json
CLI::Option* addJson(CLI::App& command, bool& json);

/// --book FILE, required.
CLI::Option* addBook(CLI::App& command, std::string& path);

/// --kiln NAME, required.
CLI::Option* addKiln(CLI::App& command, std::string& name);

} // namespace ringhold
