#include "app/logging/line_printer.h"

namespace ringhold {

LinePrinter::LinePrinter(std::ostream& out) : m_out(out), m_thread([this] { work(); }) {}

LinePrinter::~LinePrinter() {
    {
        const std::lock_guard lock(m_mutex);
        m_ending = true;
    }
    m_changed.notify_one();
    m_thread.join();
}

void LinePrinter::print(std::string line) {
    {
        const std::lock_guard lock(m_mutex);
        m_lines.push(std::move(line));
    }
    m_changed.notify_one();
}

void LinePrinter::work() {
    std::unique_lock lock(m_mutex);
    while (true) {
        m_changed.wait(lock, [this] { return m_ending || !m_lines.empty(); });
        if (m_lines.empty())
            return;
        const auto line = std::move(m_lines.front());
        m_lines.pop();
        lock.unlock();
        m_out << line << std::endl;
        lock.lock();
    }
}

} // namespace ringhold
