// A pseudo-terminal: what the program takes for a serial port, with the test at its other end.
#pragma once

#include <pty.h>
#include <termios.h>
#include <unistd.h>

#include <string>
#include <string_view>

namespace ringhold {

class PseudoTerminal {
  public:
    PseudoTerminal() {
        char name[128] = {};
        termios raw{};
        ::cfmakeraw(&raw);
        int slave = -1;
        if (::openpty(&m_master, &slave, name, &raw, nullptr) == 0)
            ::close(slave);
        m_device = name;
    }
    PseudoTerminal(const PseudoTerminal&) = delete;
    PseudoTerminal& operator=(const PseudoTerminal&) = delete;
    ~PseudoTerminal() { unplug(); }

    const std::string& device() const { return m_device; }
    /// The test's end.
    int descriptor() const { return m_master; }
    bool send(std::string_view text) const {
        return ::write(m_master, text.data(), text.size()) == static_cast<ssize_t>(text.size());
    }
    void unplug() {
        if (m_master >= 0)
            ::close(m_master);
        m_master = -1;
    }

  private:
    int m_master = -1;
    std::string m_device;
};

} // namespace ringhold
