// How long a reading takes until it is painted and until the alarm that it means is raised, with a disk that
// does well, one whose every commit takes half a second, and a book that another program holds all the time.
// The worst of each run counts: under 50 ms, whatever the disk does. Without a display; wall time, so other
// programs count too.
#include "app/instruments/app_instrument_factory.h"
#include "core/book/transaction.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/support/fed_instrument.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QEvent>
#include <QLabel>
#include <QTemporaryDir>
#include <benchmark/benchmark.h>

#include <cstdio>
#include <cstdlib>

namespace ringhold {
namespace {

using Wall = std::chrono::steady_clock;

constexpr int probes = 4;
constexpr int repeats = 200;
constexpr int raised = 20;
constexpr std::chrono::milliseconds slowSync{500};
constexpr Duration untilAlarmsEnd = std::chrono::minutes(5);

template <class Value>
Value orDie(Result<Value> result) {
    if (!result) {
        std::fprintf(stderr, "latency_bench: %s\n", result.error().text().c_str());
        std::exit(1);
    }
    return std::move(result).value();
}

class HandClock final : public Clock {
  public:
    Instant now() const override { return m_now; }
    void forward(Duration by) { m_now += by; }

  private:
    Instant m_now{std::chrono::hours(492000)};
};

/// Sees the label painted.
class PaintEye final : public QObject {
  public:
    explicit PaintEye(QObject& watched) { watched.installEventFilter(this); }
    bool painted = false;

  protected:
    bool eventFilter(QObject*, QEvent* event) override {
        painted = painted || event->type() == QEvent::Paint;
        return false;
    }
};

/// A window on one firing whose instrument says what the bench wants.
class FedWindow {
  public:
    FedWindow() {
        notebook = orDie(Notebook::open((m_folder.path() + QStringLiteral("/bench.ringhold")).toStdString(),
                                        instruments, clock));
        NewFiring firing;
        Kiln kiln;
        kiln.name = "bench";
        firing.kiln = orDie(notebook->writer().add(kiln));
        firing.title = QStringLiteral("bench");
        session = orDie(notebook->beginWith(firing, std::make_unique<test::FedInstrument>(m_fed)));
        window = std::make_unique<MainWindow>(*notebook, m_theme);
        window->show();
        say(999);
        QCoreApplication::processEvents();
    }
    /// All probes at the next second.
    void say(std::optional<double> celsius) {
        clock.forward(std::chrono::seconds(1));
        for (int i = 0; i < probes; ++i)
            m_fed->say(clock.now(), "T" + std::to_string(i), Quantity::temperature, celsius);
    }
    QLabel* temperature() {
        for (auto* label : window->findChildren<QLabel*>())
            if (label->accessibleName() == QStringLiteral("Temperature") && label->isVisible())
                return label;
        std::fprintf(stderr, "latency_bench: the window shows no temperature\n");
        std::exit(1);
    }

  private:
    QTemporaryDir m_folder;
    Theme m_theme;
    test::FedInstrument* m_fed = nullptr;

  public:
    HandClock clock;
    AppInstrumentFactory instruments{clock};
    std::unique_ptr<Notebook> notebook;
    FiringSession* session = nullptr;
    std::unique_ptr<MainWindow> window;
};

double milliseconds(Wall::duration time) {
    return std::chrono::duration<double, std::milli>(time).count();
}

/// Until `done`, or for ten seconds.
template <class Done>
double untilDone(Done done) {
    const auto from = Wall::now();
    while (!done() && Wall::now() - from < std::chrono::seconds(10))
        QCoreApplication::processEvents();
    return milliseconds(Wall::now() - from);
}

double worstToThePaint(FedWindow& fed) {
    PaintEye eye(*fed.temperature());
    double worst = 0;
    for (int i = 0; i < repeats; ++i) {
        untilDone([from = Wall::now()] { return Wall::now() - from > std::chrono::milliseconds(20); });
        eye.painted = false;
        const auto from = Wall::now();
        fed.say(1000 + i);
        untilDone([&] { return eye.painted; });
        worst = std::max(worst, milliseconds(Wall::now() - from));
    }
    return worst;
}

double worstToTheAlarm(FedWindow& fed) {
    double worst = 0;
    for (int i = 0; i < raised; ++i) {
        const auto from = Wall::now();
        fed.say(std::nullopt);
        untilDone([&] { return fed.session->alarms().find(AlarmCause::probeOpen) != nullptr; });
        worst = std::max(worst, milliseconds(Wall::now() - from));
        fed.say(1100 + i);
        fed.session->check();
        fed.clock.forward(untilAlarmsEnd);
        fed.say(1101 + i);
        fed.session->check();
        fed.session->acknowledgeAll(QStringLiteral("bench"));
    }
    return worst;
}

void measure(benchmark::State& state, FedWindow& fed) {
    for (auto _ : state) {
        state.counters["painted_ms"] = worstToThePaint(fed);
        state.counters["alarm_ms"] = worstToTheAlarm(fed);
    }
}

void aDiskThatDoesWell(benchmark::State& state) {
    FedWindow fed;
    measure(state, fed);
}

void aSlowDisk(benchmark::State& state) {
    test::FaultyDisk disk;
    FedWindow fed;
    disk.slowDown(slowSync);
    measure(state, fed);
    disk.slowDown(std::chrono::milliseconds(0));
}

void aHeldBook(benchmark::State& state) {
    FedWindow fed;
    const Book other = orDie(Book::open(fed.notebook->file(), Access::write));
    const auto held = orDie(WriteTransaction::begin(other));
    measure(state, fed);
}

BENCHMARK(aDiskThatDoesWell)->Iterations(1)->Unit(benchmark::kMillisecond);
BENCHMARK(aSlowDisk)->Iterations(1)->Unit(benchmark::kMillisecond);
BENCHMARK(aHeldBook)->Iterations(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ringhold

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
}
