// Pictures of every page in both themes, on the demo book with one firing more that is live. Usage:
// ringhold_screens FOLDER
#include "app/demo/demo_book.h"
#include "app/instruments/app_instrument_factory.h"
#include "app/pictures/page_pictures.h"
#include "app/pictures/silent_instruments.h"
#include "app/pictures/stepped_clock.h"
#include "app/pictures/unheard_sounder.h"
#include "app/window/practice_hand.h"
#include "core/kiln/practice_firing.h"
#include "tests/support/screens.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTemporaryDir>

#include <cstdio>

namespace {

using namespace ringhold;

/// The invented studio's notebook.
Status writeStudio(Notebook& notebook, std::uint64_t seed) {
    const auto book = Book::open(notebook.file(), Access::write);
    return book ? writeDemoBook(*book, demoStudio(seed), seed) : Status(book.error());
}

/// The studio's electric kiln with its newest probe, as it is today.
PracticeSettings today(const DemoStudio& studio, std::uint64_t seed) {
    auto settings = drawnPracticeSettings(practicePlan(), seed);
    settings.probeOffset = studio.kilns.front().probes.back().offset;
    settings.place = studio.kilns.front().place;
    return settings;
}

/// A live firing in the electric kiln, lived through for so long.
Result<FiringSession*> fireLive(Notebook& notebook, SteppedClock& clock, std::uint64_t seed, Duration time) {
    const DemoStudio studio = demoStudio(seed);
    const auto kiln = notebook.reader().kilnNamed(studio.kilns.front().kiln.name);
    if (!kiln || !*kiln)
        return Error{ErrorKind::notFound, "the demo's kiln is not in its book"};
    const auto probes = notebook.reader().probes((*kiln)->id);
    if (!probes)
        return probes.error();
    NewFiring firing;
    firing.kiln = (*kiln)->id;
    firing.probe = probes->back().id;
    firing.plan = practicePlan();
    firing.title = QStringLiteral("frost and lichen");
    Pack pack;
    pack.place = "middle shelf";
    pack.cones = {"8", "9", "10"};
    firing.packs.push_back(pack);
    for (const char* name : {"tall bottle", "low bowl", "lidded jar"}) {
        Piece piece;
        piece.name = name;
        piece.glaze = "Frost fern";
        piece.shelf = "middle";
        piece.catcher = true;
        firing.pieces.push_back(piece);
    }
    auto instrument = std::make_unique<PracticeInstrument>(today(studio, seed), 1.0);
    auto& kilnSide = *instrument;
    const auto session = notebook.beginWith(firing, std::move(instrument));
    if (!session)
        return session.error();
    new PracticeHand(**session, kilnSide, *habitsFor(practicePlan()), seed, *session);
    (void)(*session)->firing().writeNote(clock.now(), "Lid bung in, vent fan on.");
    liveThrough(kilnSide, clock, time);
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
    SteppedClock clock(*parseIso8601("2026-03-01T08:00:00Z"));
    SilentInstruments instruments(AppInstrumentFactory(clock).kinds());
    Theme theme;
    theme.wear(application);
    auto notebook =
        Notebook::open(folder.filePath(QStringLiteral("studio.ringhold")).toStdString(), instruments, clock);
    if (!notebook) {
        std::fprintf(stderr, "%s\n", notebook.error().text().c_str());
        return 1;
    }
    constexpr std::uint64_t seed = 4;
    if (const auto written = writeStudio(**notebook, seed); !written)
        std::fprintf(stderr, "%s\n", written.error().text().c_str());
    (void)(*notebook)->preferences().setZone(demoZone);
    UnheardSounder sounder;
    MainWindow window(**notebook, theme, &sounder);
    window.resize(1280, 800);
    window.show();
    keepScreens(window, theme, QStringLiteral("begin"));
    window.hide(); // what nobody sees is not drawn
    if (const auto session = fireLive(**notebook, clock, seed, std::chrono::minutes(60 * 8 + 25)); !session)
        std::fprintf(stderr, "%s\n", session.error().text().c_str());
    answerAll(**notebook, window);
    window.show();
    QApplication::processEvents();
    if (const auto taken = picturePages(window, theme, {QString::fromLocal8Bit(argv[1]), {1, 2}}); !taken)
        std::fprintf(stderr, "%s\n", taken.error().text().c_str());
    std::printf("The pictures are in %s\n", argv[1]);
    return 0;
}
