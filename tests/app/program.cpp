#include "tests/app/program.h"

#include "tests/support/places.h"

#include <QProcess>

#include <algorithm>

namespace ringhold {

long Ran::errorLines() const {
    return std::count(err.begin(), err.end(), '\n');
}

Ran ringholdRuns(const std::vector<std::string>& arguments, const std::string& outputTo) {
    QProcess process;
    auto environment = QProcessEnvironment::systemEnvironment();
    for (const char* display : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
        environment.remove(QString::fromLatin1(display));
    process.setProcessEnvironment(environment);
    QStringList list;
    for (const auto& argument : arguments)
        list << QString::fromStdString(argument);
    if (!outputTo.empty())
        process.setStandardOutputFile(QString::fromStdString(outputTo));
    process.setStandardInputFile(QProcess::nullDevice());
    process.start(QString::fromStdString(test::programFile().string()), list, QIODevice::ReadOnly);
    if (!process.waitForFinished(60'000))
        process.kill();
    return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            process.readAllStandardOutput().toStdString(), process.readAllStandardError().toStdString()};
}

} // namespace ringhold
