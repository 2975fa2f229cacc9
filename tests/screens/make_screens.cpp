// Pictures of every page in both themes: past firings of the practice kiln, and one that is live. Usage:
// ringhold_screens FOLDER
#include "app/console.h"
#include "app/practice/practice_run.h"
#include "app/window/practice_hand.h"
#include "core/kiln/practice_firing.h"
#include "tests/support/screens.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTemporaryDir>

#include <cstdio>
#include <iostream>
#include <sstream>

namespace {

using namespace ringhold;

/// Goes on only when told to.
class StepClock : public Clock {
  public:
    Instant now() const override { return m_now; }
    void pass(Duration time) { m_now += time; }

  private:
    Instant m_now = *parseIso8601("2026-03-01T08:00:00Z");
};

class NoInstruments : public InstrumentFactory {
  public:
    std::vector<InstrumentKind> kinds() const override {
        return {{"serial", "serial:/dev/ttyUSB0?baud=9600"}, {"practice", "practice:?seed=1&speed=60"}};
    }
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec&) override {
        return Error{ErrorKind::notFound, "pictures listen to nothing"};
    }
};

Status firePast(Notebook& notebook, const StepClock& clock, std::uint64_t seed, int daysAgo) {
    std::ostringstream silent;
    Console console(silent, silent);
    const auto book = Book::open(notebook.file(), Access::write);
    if (!book)
        return book.error();
    const auto run =
        PracticeRun::prepare(*book, seed, clock.now() - std::chrono::hours(24 * daysAgo), console);
    return run ? run.value()->fire() : Status(run.error());
}

/// A live firing of the kiln with that seed, lived through until the given minute.
Result<FiringSession*> fireLive(Notebook& notebook, StepClock& clock, std::uint64_t seed, int minutes) {
    const auto kilns = notebook.reader().kilns();
    const auto probes = notebook.reader().probes(kilns->front().id);
    NewFiring firing;
    firing.kiln = kilns->front().id;
    firing.probe = probes->front().id;
    firing.plan = practicePlan();
    firing.title = QStringLiteral("frost and lichen");
    Pack pack;
    pack.place = "middle shelf";
    pack.cones = {"8", "9", "10"};
    firing.packs.push_back(pack);
    for (const char* name : {"tall bottle", "low bowl", "lidded jar"}) {
        Piece piece;
        piece.name = name;
        piece.glaze = "frost";
        piece.shelf = "middle";
        piece.catcher = true;
        firing.pieces.push_back(piece);
    }
    auto instrument = std::make_unique<PracticeInstrument>(drawnPracticeSettings(practicePlan(), seed), 1.0);
    auto& kilnSide = *instrument;
    const auto session = notebook.beginWith(firing, std::move(instrument));
    if (!session)
        return session.error();
    new PracticeHand(**session, kilnSide, *habitsFor(practicePlan()), seed, *session);
    (void)(*session)->firing().writeNote(clock.now(), "Lid bung in, vent fan on.");
    for (int minute = 0; minute < minutes; ++minute) {
        clock.pass(std::chrono::minutes(1));
        kilnSide.advance(clock.now());
        QApplication::processEvents();
    }
    return session;
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fprintf(stderr, "usage: ringhold_screens FOLDER\n");
        return 2;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("RINGHOLD_SCREENS", argv[1]);
    QApplication application(argc, argv);
    const QTemporaryDir folder;
    StepClock clock;
    NoInstruments instruments;
    Theme theme;
    theme.wear(application);
    auto notebook =
        Notebook::open(folder.filePath(QStringLiteral("studio.ringhold")).toStdString(), instruments, clock);
    if (!notebook) {
        std::fprintf(stderr, "%s\n", notebook.error().text().c_str());
        return 1;
    }
    constexpr std::uint64_t seed = 4;
    for (int past = 5; past >= 1; --past)
        if (const auto fired = firePast(**notebook, clock, seed, past * 6); !fired)
            std::fprintf(stderr, "%s\n", fired.error().text().c_str());
    (void)(*notebook)->preferences().setZone("Europe/Lisbon");
    MainWindow window(**notebook, theme);
    window.resize(1280, 800);
    window.show();
    keepScreens(window, theme, QStringLiteral("begin"));
    if (const auto session = fireLive(**notebook, clock, seed, 60 * 8 + 25); !session)
        std::fprintf(stderr, "%s\n", session.error().text().c_str());
    for (const auto& spread : window.spreads()) {
        window.open(spread);
        QApplication::processEvents();
        keepScreens(window, theme, spread.toLower());
    }
    std::printf("The pictures are in %s\n", argv[1]);
    return 0;
}
