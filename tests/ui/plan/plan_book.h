// A notebook in a folder of its own, for the tests of the plan page.
#pragma once

#include "core/book/kept_plans.h"
#include "core/plan/plan_examples.h"
#include "core/plan/plan_file.h"
#include "tests/core/book/book_folder.h"
#include "ui/session/notebook.h"

#include <gtest/gtest.h>

namespace ringhold::test {

class NoInstruments : public InstrumentFactory {
  public:
    std::vector<InstrumentKind> kinds() const override { return {}; }
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec&) override {
        return Error{ErrorKind::badInput, "there are no instruments here"};
    }
};

class StoppedClock : public Clock {
  public:
    Instant now() const override { return *parseIso8601("2026-03-01T09:00:00Z"); }
};

/// With a kiln "Heron" that has a probe and three filed offsets, all near 7 °C high.
class PlanBook {
  public:
    PlanBook() {
        auto opened = Notebook::open(folder / "plans.ringhold", m_instruments, m_clock);
        EXPECT_TRUE(opened.ok()) << opened.error().text();
        m_notebook = std::move(*opened);
        EXPECT_TRUE(m_notebook->preferences().setZone("UTC"));
    }

    Notebook& notebook() { return *m_notebook; }
    Preferences& preferences() { return m_notebook->preferences(); }

    void keep(const std::vector<Plan>& plans) {
        auto writer = m_notebook->writer();
        EXPECT_TRUE(keepPlans(writer, plans));
    }
    std::vector<Plan> kept() const { return *keptPlans(m_notebook->reader()); }

    Instant clockNow() const { return m_clock.now(); }

    /// Until it is released, the book takes no preference, as if the disk were full.
    void hold() {
        tamper(folder / "plans.ringhold", "CREATE TRIGGER held BEFORE INSERT ON preference BEGIN "
                                          "SELECT RAISE(ABORT, 'held'); END");
    }
    void release() { tamper(folder / "plans.ringhold", "DROP TRIGGER held"); }

    KilnId addHeron(Fuel fuel = Fuel::electric) {
        auto writer = m_notebook->writer();
        Kiln kiln;
        kiln.name = "Heron";
        kiln.fuel = fuel;
        kiln.ratedPower = Power{9000};
        kiln.ratedVolts = Volts{230};
        kiln.pricePerKilowattHour = 0.25;
        const KilnId id = *writer.add(kiln);
        const ProbeId probe = *writer.add(Probe{{}, id, "control", ThermocoupleType::S, "back wall", {}, {}});
        for (const double offset_C : {6.5, 7.5, 7.0}) {
            const Instant at = m_clock.now() - std::chrono::hours(24 * ++m_firings);
            const FiringId firing = *writer.add(Firing{{}, id, "past", at, at, {}, {}});
            EXPECT_TRUE(writer.file({firing, id, probe, "middle shelf", at,
                                     TemperatureDifference::fromCelsius(offset_C),
                                     TemperatureDifference::fromCelsius(1.5)}));
        }
        Q_EMIT m_notebook->bookChanged();
        return id;
    }

    BookFolder folder;

  private:
    int m_firings = 0;
    NoInstruments m_instruments;
    StoppedClock m_clock;
    std::unique_ptr<Notebook> m_notebook;
};

} // namespace ringhold::test
