// Qt's event loop for a verb that listens to instruments. Needs no display.
#pragma once

#include <QCoreApplication>

#include <clocale>

namespace ringhold {

class HeadlessApplication {
  public:
    HeadlessApplication() : m_application(m_count, m_arguments) {
        // Qt takes over the computer's language; numbers in files keep their point.
        std::setlocale(LC_NUMERIC, "C");
    }

  private:
    int m_count = 1;
    char m_name[9] = "ringhold";
    char* m_arguments[2] = {m_name, nullptr};
    QCoreApplication m_application;
};

} // namespace ringhold
