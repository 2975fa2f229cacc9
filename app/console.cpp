#include "app/console.h"

#include <algorithm>

namespace ringhold {

void Console::complain(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](unsigned char c) { return c < 0x20; }, ' ');
    text.erase(text.find_last_not_of(' ') + 1);
    const std::lock_guard lock(m_mutex);
    if (text == m_last)
        return;
    m_error << "ringhold: " << text << std::endl;
    m_last = std::move(text);
}

} // namespace ringhold
