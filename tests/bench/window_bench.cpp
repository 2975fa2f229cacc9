// What the window costs: first paint under 250 ms with a book of 500 firings; repainting a live firing of
// 72,000 points on each of 3 probes under 8 ms; its report as a PDF under 0.5 s; all of it in under 150 MB.
// Without a display; the book is made anew in a temporary folder, which takes some seconds.
#include "app/instruments/app_instrument_factory.h"
#include "app/pictures/silent_instruments.h"
#include "app/pictures/stepped_clock.h"
#include "core/book/transaction.h"
#include "core/kiln/practice_firing.h"
#include "core/report/book_report.h"
#include "ui/report/report_layout.h"
#include "ui/report/report_pdf.h"
#include "ui/session/notebook.h"
#include "ui/spread/curve_view.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTemporaryDir>
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <fstream>

namespace ringhold {
namespace {

constexpr int pastFirings = 500;
constexpr int pastInstants = 240;
constexpr std::chrono::minutes pastSpacing{4};
constexpr int livePoints = 72'000;
constexpr std::chrono::seconds liveSpacing{1};
constexpr const char* probeNames[] = {"top", "middle", "bottom"};
const Instant firstLit = *parseIso8601("2016-01-02T06:00:00Z");
const Instant liveLit = *parseIso8601("2026-03-01T06:00:00Z");

template <class T>
T good(Result<T> result) {
    if (result)
        return std::move(*result);
    std::fprintf(stderr, "%s\n", result.error().text().c_str());
    std::exit(1);
}

void good(const Status& status) {
    if (status)
        return;
    std::fprintf(stderr, "%s\n", status.error().text().c_str());
    std::exit(1);
}

/// Climb, soak, drop, a long hold; a little noise.
double courseAt(double hour, int number) {
    const double wobble = std::sin(401 * hour + number);
    if (hour < 7)
        return 20 + 176 * hour + wobble;
    if (hour < 8.5)
        return 1252 + 14 * (hour - 7) + wobble;
    return (hour < 9 ? 1273 - 370 * (hour - 8.5) : 1088) + wobble;
}

/// MB that this process has in memory now, or at the most so far.
double memory_MB(const char* what) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with(what))
            return std::stod(line.substr(line.find(':') + 1)) / 1024;
    return 0;
}

/// A kiln "Heron" with three probes.
class Studio {
  public:
    explicit Studio(BookWriter writer) : m_writer(writer) {
        Kiln kiln;
        kiln.name = "Heron";
        m_kiln = good(m_writer.add(kiln));
        for (const char* name : probeNames)
            m_probes.push_back(
                good(m_writer.add(Probe{{}, m_kiln, name, ThermocoupleType::S, name, {}, {}})));
    }

    FiringId fire(int number, Instant lit, std::optional<Instant> ended, int instants, Duration spacing) {
        const auto firing = good(m_writer.add(
            Firing{{}, m_kiln, "Firing " + std::to_string(number), lit, ended, practicePlan(), {}}));
        std::vector<Reading> readings;
        for (std::size_t probe = 0; probe < m_probes.size(); ++probe) {
            const auto channel = good(
                m_writer.add(Channel{{}, firing, Quantity::temperature, probeNames[probe], m_probes[probe]}));
            for (int i = 0; i < instants; ++i)
                readings.push_back(
                    {channel, lit + i * spacing,
                     courseAt(inHours(i * spacing), number) + 4.0 * static_cast<double>(probe)});
        }
        good(m_writer.add(readings));
        const auto pack = good(m_writer.add(
            Pack{{}, firing, "middle shelf", ConeType::selfSupporting, {"8", "9", "10"}, false}));
        for (int look = 0; look < 5; ++look)
            good(m_writer.add(Look{{}, pack, lit + std::chrono::minutes(450 + 8 * look), "9", look * 1.5}));
        for (int piece = 0; piece < 12; ++piece)
            good(m_writer.add(Piece{{},
                                    firing,
                                    "bottle " + std::to_string(piece),
                                    piece % 2 ? "Frost fern" : "Lichen",
                                    "top",
                                    true}));
        return firing;
    }

  private:
    BookWriter m_writer;
    KilnId m_kiln{};
    std::vector<ProbeId> m_probes;
};

/// 500 firings that have ended and, in a book of its own, one that is live.
class Books {
  public:
    Books() {
        {
            const Book book = good(Book::open(past(), Access::create));
            auto transaction = good(WriteTransaction::begin(book));
            Studio studio{BookWriter(book)};
            for (int number = 0; number < pastFirings; ++number) {
                const Instant lit = firstLit + std::chrono::hours(24 * 7) * number;
                studio.fire(number, lit, lit + pastInstants * pastSpacing, pastInstants, pastSpacing);
            }
            good(transaction.commit());
        }
        const Book book = good(Book::open(live(), Access::create));
        auto transaction = good(WriteTransaction::begin(book));
        m_firing = Studio{BookWriter(book)}.fire(1, liveLit, {}, livePoints, liveSpacing);
        good(transaction.commit());
    }

    std::filesystem::path past() const { return named("past.ringhold"); }
    std::filesystem::path live() const { return named("live.ringhold"); }
    FiringId liveFiring() const { return m_firing; }

  private:
    std::filesystem::path named(const char* name) const {
        return m_folder.filePath(QString::fromLatin1(name)).toStdString();
    }

    QTemporaryDir m_folder;
    FiringId m_firing{};
};

const Books& books() {
    static const Books made;
    return made;
}

/// The window on a book, at a time that stands still until it is told to pass.
class OpenWindow {
  public:
    OpenWindow(const std::filesystem::path& file, Instant now)
        : m_clock(now), m_instruments(AppInstrumentFactory(m_clock).kinds()),
          m_notebook(good(Notebook::open(file, m_instruments, m_clock))) {
        m_theme.wear(*qApp);
        for (const auto& failure : m_notebook->resume())
            good(Status(failure));
        m_window.emplace(*m_notebook, m_theme);
        m_window->show();
    }

    SteppedClock& clock() { return m_clock; }
    FiringSession& session() { return *m_notebook->sessions().front(); }
    MainWindow& window() { return *m_window; }

  private:
    SteppedClock m_clock;
    SilentInstruments m_instruments;
    std::unique_ptr<Notebook> m_notebook;
    Theme m_theme;
    std::optional<MainWindow> m_window;
};

/// Sees the first paint of a widget.
class PaintWatch : public QObject {
  public:
    explicit PaintWatch(QWidget& widget) { widget.installEventFilter(this); }
    bool painted() const { return m_painted; }

  private:
    bool eventFilter(QObject* watched, QEvent* event) override {
        m_painted = m_painted || event->type() == QEvent::Paint;
        return QObject::eventFilter(watched, event);
    }
    bool m_painted = false;
};

/// From the closed book to the painted window.
void firstPaint(benchmark::State& state) {
    const auto file = books().past();
    const Instant now = firstLit + std::chrono::hours(24 * 7) * pastFirings;
    for (auto _ : state) {
        OpenWindow open(file, now);
        const PaintWatch watch(open.window());
        while (!watch.painted())
            QApplication::processEvents();
        state.PauseTiming(); // closing it is not first paint
        open.window().close();
        QApplication::processEvents();
        state.ResumeTiming();
    }
}

/// Opened once for all rounds, since that reads all points; closed before the application ends.
std::unique_ptr<OpenWindow>& liveWindow() {
    static std::unique_ptr<OpenWindow> window;
    return window;
}

/// One reading more on each probe, and all of the spread that changes with them.
void liveRepaint(benchmark::State& state) {
    if (!liveWindow())
        liveWindow() = std::make_unique<OpenWindow>(books().live(), liveLit + livePoints * liveSpacing);
    auto& open = *liveWindow();
    QApplication::processEvents();
    int number = 0;
    for (auto _ : state) {
        open.clock().pass(liveSpacing);
        for (const char* name : probeNames)
            good(open.session().firing().take(
                {open.clock().now(), name, Quantity::temperature, 1088 + std::sin(++number)}));
        for (auto* curve : open.window().findChildren<CurveView*>())
            if (curve->isVisible())
                curve->refresh();
        QApplication::processEvents();
    }
    state.counters["now_MB"] = memory_MB("VmRSS");
    state.counters["most_MB"] = memory_MB("VmHWM");
}

/// Of the live firing, out of the book.
void reportPdf(benchmark::State& state) {
    const Book book = good(Book::open(books().live(), Access::read));
    qsizetype bytes = 0;
    for (auto _ : state) {
        const auto content =
            good(reportFromBook(book, books().liveFiring(), {TemperatureScale::celsius, "UTC"}));
        bytes = good(toPdf(layOutReport(content, *paperNamed(QStringLiteral("a4"))))).size();
    }
    state.counters["kB"] = static_cast<double>(bytes) / 1024;
    state.counters["most_MB"] = memory_MB("VmHWM");
}

BENCHMARK(firstPaint)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(liveRepaint)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(reportPdf)->Unit(benchmark::kMillisecond)->UseRealTime();

} // namespace
} // namespace ringhold

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    ringhold::liveWindow().reset();
    return 0;
}
