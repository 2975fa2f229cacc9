#include "app/verbs/options.h"

#include <charconv>
#include <cmath>

namespace ringhold {

namespace {

std::optional<double> finiteNumber(const std::string& text) {
    double value = 0;
    const char* first = text.data() + (text.rfind('+', 0) == 0 ? 1 : 0);
    const char* last = text.data() + text.size();
    const auto [end, error] = std::from_chars(first, last, value);
    if (error != std::errc{} || end != last || !std::isfinite(value))
        return std::nullopt;
    return value;
}

template <class Value>
CLI::Option* addNumberInto(CLI::App& command, const std::string& flag, Value& value,
                           const std::string& help) {
    const auto take = [&value, flag](const std::string& text) {
        const auto number = finiteNumber(text);
        if (!number)
            throw CLI::ValidationError(flag, "\"" + text + "\" is not a number");
        value = *number;
    };
    return command.add_option_function<std::string>(flag, take, help)->type_name("NUMBER");
}

} // namespace

CLI::Option* addNumber(CLI::App& command, const std::string& flag, double& value, const std::string& help) {
    return addNumberInto(command, flag, value, help);
}

CLI::Option* addNumber(CLI::App& command, const std::string& flag, std::optional<double>& value,
                       const std::string& help) {
    return addNumberInto(command, flag, value, help);
}

CLI::Option* addJson(CLI::App& command, bool& json) {
    return command.add_flag("--json", json, "Print one JSON object");
}

CLI::Option* addBook(CLI::App& command, std::string& path) {
    return command.add_option("--book", path, "The book, one file")->type_name("FILE")->required();
}

CLI::Option* addKiln(CLI::App& command, std::string& name) {
    return command.add_option("--kiln", name, "The kiln's name in the book")->type_name("NAME")->required();
}

} // namespace ringhold
