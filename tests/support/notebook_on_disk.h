// A notebook in a folder of its own, with firings written in it, for tests of pages.
#pragma once

#include "core/units/curve.h"
#include "tests/core/book/book_folder.h"
#include "ui/session/notebook.h"

#include <memory>
#include <string>
#include <vector>

class QWidget;

namespace ringhold::test {

class SetClock : public Clock {
  public:
    explicit SetClock(Instant now) : m_now(now) {}
    Instant now() const override { return m_now; }
    void set(Instant now) { m_now = now; }

  private:
    Instant m_now;
};

/// Makes none: what a computer without any offers.
class NoInstruments : public InstrumentFactory {
  public:
    std::vector<InstrumentKind> kinds() const override { return {}; }
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec&) override {
        return Error{ErrorKind::notFound, "no instruments here"};
    }
};

/// A crystalline firing of 17 h, a reading every so often: up to the peak, a hold of 3 h, two rings, out.
Curve crystalCurve(Instant began, double peak_C = 1270, double hold_C = 1080,
                   Duration spacing = std::chrono::minutes(1));

/// A firing to be written.
struct PastFiring {
    std::string title = "Frost fern";
    Instant began{};
    std::optional<ProbeId> probe{};
    std::optional<Plan> plan{};
    Curve curve{}; ///< empty: crystalCurve()
    bool live = false;
};

class NotebookOnDisk {
  public:
    NotebookOnDisk();
    Notebook& notebook() { return *m_notebook; }
    Notebook* operator->() { return m_notebook.get(); }
    SetClock& clock() { return m_clock; }

    KilnId addKiln(const std::string& name, Fuel fuel = Fuel::electric);
    ProbeId addProbe(KilnId kiln, const std::string& label, ThermocoupleType type = ThermocoupleType::S);
    /// With a pack 8, 9, 10 on the middle shelf and looks that saw 9 down at the peak.
    FiringId addFiring(KilnId kiln, const PastFiring& firing);
    PieceId addPiece(FiringId firing, const std::string& name, const std::string& glaze = {},
                     bool sagger = false);

    std::vector<Piece> pieces(FiringId firing);
    std::vector<Outcome> outcomes(FiringId firing);

  private:
    BookFolder m_folder;
    SetClock m_clock;
    NoInstruments m_instruments;
    std::unique_ptr<Notebook> m_notebook;
};

/// Noon UTC of that day of March 2026.
Instant noonOfMarch(int day);

/// Shows it as a window of that size and gives it the keyboard.
void present(QWidget& widget, int width = 1180, int height = 640);
/// Types into whatever has the keyboard.
void type(const QString& text);
/// Presses it where the keyboard is, or in the active window when nothing in it has the keyboard.
void press(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
/// Every control that can have the keyboard says what it is to a screen reader, and Tab reaches every one
/// that is to be reached by it.
void expectUsableByKeyboard(QWidget& page);

} // namespace ringhold::test
