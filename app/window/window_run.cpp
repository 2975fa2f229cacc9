#include "app/window/window_run.h"

#include "app/instruments/app_instrument_factory.h"
#include "app/system_clock.h"
#include "app/window/practice_hand.h"
#include "core/kiln/practice_firing.h"
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

/// The practice kiln of that seed as the book knows it, made if need be.
Result<Kiln> practiceKiln(Notebook& notebook, std::uint64_t seed, const PracticeSettings& secrets) {
    const std::string name = "Practice kiln " + std::to_string(seed);
    const auto known = notebook.reader().kilnNamed(name);
    if (!known)
        return known.error();
    if (*known)
        return **known;
    Kiln kiln;
    kiln.name = name;
    kiln.ratedPower = secrets.kiln.fullPower;
    kiln.ratedVolts = secrets.kiln.ratedVolts;
    const auto id = notebook.writer().add(kiln);
    if (!id)
        return id.error();
    kiln.id = *id;
    return kiln;
}

Result<ProbeId> practiceProbe(Notebook& notebook, KilnId kiln) {
    const auto probes = notebook.reader().probes(kiln);
    if (!probes)
        return probes.error();
    if (!probes->empty())
        return probes->front().id;
    Probe probe;
    probe.kiln = kiln;
    probe.label = "control";
    probe.fitted = notebook.clock().now();
    return notebook.writer().add(probe);
}

/// Begins the firing; the hand that looks at the cones belongs to the session.
Status beginPractice(Notebook& notebook, const WindowPractice& practice) {
    const auto secrets = drawnPracticeSettings(practicePlan(), practice.seed);
    const auto kiln = practiceKiln(notebook, practice.seed, secrets);
    if (!kiln)
        return kiln.error();
    const auto probe = practiceProbe(notebook, kiln->id);
    if (!probe)
        return probe.error();
    if (const auto open = notebook.reader().openFiring(kiln->id); open && *open)
        if (const auto ended = notebook.writer().end((*open)->id, notebook.clock().now()); !ended)
            return ended; // broken off with the window; a practice kiln cannot go on where it was
    NewFiring firing;
    firing.kiln = kiln->id;
    firing.probe = *probe;
    firing.plan = practicePlan();
    firing.title = QStringLiteral("practice");
    Pack pack;
    pack.place = "middle shelf";
    pack.cones = {"8", "9", "10"};
    firing.packs.push_back(pack);
    auto instrument = std::make_unique<PracticeInstrument>(secrets, practice.speed);
    auto& kilnSide = *instrument;
    const auto session = notebook.beginWith(firing, std::move(instrument));
    if (!session)
        return session.error();
    if (auto habits = habitsFor(practicePlan()))
        new PracticeHand(**session, kilnSide, *habits, practice.seed, *session);
    return {};
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
            return begun;
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
