#include "app/window/window_run.h"

#include "app/instruments/app_instrument_factory.h"
#include "app/system_clock.h"
#include "ui/session/notebook.h"
#include "ui/sound/audio_sounder.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QSettings>
#include <QStandardPaths>

namespace ringhold {

namespace {

constexpr const char* lastBook = "lastBook";

QSettings settings() {
    return QSettings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("ringhold"),
                     QStringLiteral("ringhold"));
}

} // namespace

Result<std::filesystem::path> usualBook() {
    const QString last = settings().value(QLatin1String(lastBook)).toString();
    std::error_code error;
    if (!last.isEmpty() && std::filesystem::exists(last.toStdString(), error))
        return std::filesystem::path(last.toStdString());
    const auto folder =
        std::filesystem::path(
            QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation).toStdString()) /
        "ringhold";
    std::filesystem::create_directories(folder, error);
    if (error)
        return Error{ErrorKind::unwritable, error.message(), folder.string()};
    return folder / "notebook.ringhold";
}

bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

Status runWindow(const std::filesystem::path& book, const std::optional<WindowPractice>& practice) {
    if (!hasDisplay())
        return Error{ErrorKind::failed,
                     "there is no display for the window; the verbs need none (ringhold --help)"};
    int argumentCount = 1;
    char name[] = "ringhold";
    char* arguments[] = {name, nullptr};
    QApplication application(argumentCount, arguments);
    QApplication::setApplicationDisplayName(QStringLiteral("Ringhold"));
    Theme theme;
    theme.wear(application);
    const SystemClock clock;
    AppInstrumentFactory factory(clock);
    auto notebook = Notebook::open(book, factory, clock);
    if (!notebook)
        return notebook.error();
    std::vector<Error> failures;
    if (practice) {
        if (const auto begun = beginPractice(**notebook, *practice); !begun)
            return begun.error();
    } else {
        settings().setValue(QLatin1String(lastBook),
                            QString::fromStdString(std::filesystem::absolute(book).string()));
        failures = (*notebook)->resume();
    }
    AudioSounder sounder;
    MainWindow window(**notebook, theme, &sounder);
    for (const auto& failure : failures)
        window.tell(QString::fromStdString(failure.text()));
    window.show();
    const int status = QApplication::exec();
    return status == 0 ? Status() : Status(Error{ErrorKind::failed, "the window ended badly"});
}

} // namespace ringhold
