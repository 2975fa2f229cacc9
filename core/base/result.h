// What a function gives back when it can fail. No exception crosses a public function of core.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace ringhold {

/// What kind of thing went wrong. The edge (app, ui) chooses exit status and wording from it.
enum class ErrorKind {
    badInput,   ///< what was given makes no sense: a file, a cell, an argument (exit status 2)
    notFound,   ///< what was named is not there (2)
    unreadable, ///< there, but cannot be read (2)
    foreign,    ///< a file of some other program, or of a newer Ringhold (2)
    unwritable, ///< disk full or read-only, no permission (1)
    failed,     ///< anything else that should have worked: device, database (1)
};

/// One failure: where, and in plain words what. `line` counts from 1.
struct Error {
    ErrorKind kind = ErrorKind::failed;
    std::string what;
    std::string file{};
    std::optional<long> line{};

    /// One line for people: "kiln.csv:14: 6000 °C is hotter than any kiln".
    std::string text() const {
        std::string where = file;
        if (line)
            where += (where.empty() ? "line " : ":") + std::to_string(*line);
        return where.empty() ? what : where + ": " + what;
    }
};

/// A value, or the Error that kept it from being made.
template <class T>
class [[nodiscard]] Result {
  public:
    Result(T value) : m_state(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : m_state(std::in_place_index<1>, std::move(error)) {}

    bool ok() const { return m_state.index() == 0; }
    explicit operator bool() const { return ok(); }
    /// Only after ok(); throws std::bad_variant_access otherwise.
    T& value() & { return std::get<0>(m_state); }
    const T& value() const& { return std::get<0>(m_state); }
    T&& value() && { return std::get<0>(std::move(m_state)); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }
    T& operator*() & { return value(); }
    const T& operator*() const& { return value(); }
    /// Only when not ok().
    const Error& error() const { return std::get<1>(m_state); }

  private:
    std::variant<T, Error> m_state;
};

/// Success, or an Error.
class [[nodiscard]] Status {
  public:
    Status() = default;
    Status(Error error) : m_error(std::move(error)) {}

    bool ok() const { return !m_error; }
    explicit operator bool() const { return ok(); }
    const Error& error() const { return *m_error; }

  private:
    std::optional<Error> m_error;
};

} // namespace ringhold
