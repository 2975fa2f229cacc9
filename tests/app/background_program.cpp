#include "tests/app/background_program.h"

#include "tests/support/places.h"

#include <QElapsedTimer>

namespace ringhold {

BackgroundProgram::BackgroundProgram(const std::vector<std::string>& arguments) {
    QStringList list;
    for (const auto& argument : arguments)
        list << QString::fromStdString(argument);
    m_process.setStandardInputFile(QProcess::nullDevice());
    m_process.start(QString::fromStdString(test::programFile().string()), list);
    m_process.waitForStarted();
}

BackgroundProgram::~BackgroundProgram() {
    killHard();
}

std::vector<std::string> BackgroundProgram::lines() {
    m_out += m_process.readAllStandardOutput().toStdString();
    std::vector<std::string> all;
    std::size_t begin = 0;
    for (auto end = m_out.find('\n'); end != std::string::npos; end = m_out.find('\n', begin)) {
        all.push_back(m_out.substr(begin, end - begin));
        begin = end + 1;
    }
    return all;
}

bool BackgroundProgram::waitForLines(std::size_t count) {
    QElapsedTimer timer;
    timer.start();
    while (lines().size() < count && timer.elapsed() < 30'000)
        if (!m_process.waitForReadyRead(1000) && m_process.state() == QProcess::NotRunning)
            break;
    return lines().size() >= count;
}

std::string BackgroundProgram::errors() {
    return m_process.readAllStandardError().toStdString();
}

void BackgroundProgram::killHard() {
    m_process.kill();
    m_process.waitForFinished();
}

int BackgroundProgram::terminate() {
    m_process.terminate();
    return wait();
}

int BackgroundProgram::wait() {
    if (!m_process.waitForFinished(30'000) || m_process.exitStatus() != QProcess::NormalExit)
        return -1;
    return m_process.exitCode();
}

} // namespace ringhold
