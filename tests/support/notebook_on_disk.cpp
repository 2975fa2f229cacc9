#include "tests/support/notebook_on_disk.h"

#include "core/book/transaction.h"
#include "tests/core/book/sample_firing.h"
#include "tests/core/watch/curve_maker.h"

#include <QAccessible>
#include <QApplication>
#include <QTest>
#include <QWidget>

namespace ringhold::test {

Instant noonOfMarch(int day) {
    return *parseIso8601("2026-03-01T12:00:00Z") + std::chrono::hours(24 * (day - 1));
}

Curve crystalCurve(Instant began, double peak_C, double hold_C, Duration spacing) {
    Curve curve = readEvery(curveOf({{0, 20},
                                     {400, peak_C - 250},
                                     {650, peak_C},
                                     {660, peak_C},
                                     {690, hold_C},
                                     {870, hold_C},
                                     {880, hold_C - 40},
                                     {894, hold_C - 40},
                                     {900, hold_C},
                                     {914, hold_C},
                                     {1020, 700}}),
                            spacing);
    for (auto& point : curve)
        point.at += began - midnight;
    return curve;
}

NotebookOnDisk::NotebookOnDisk() : m_clock(noonOfMarch(28)) {
    auto opened = Notebook::open(m_folder / "kiln.ringhold", m_instruments, m_clock);
    EXPECT_TRUE(opened.ok());
    m_notebook = std::move(*opened);
    expectGood(m_notebook->preferences().setZone("Europe/Lisbon"));
}

KilnId NotebookOnDisk::addKiln(const std::string& name, Fuel fuel) {
    Kiln kiln = kilnCalled(name);
    kiln.fuel = fuel;
    return good(m_notebook->writer().add(kiln));
}

ProbeId NotebookOnDisk::addProbe(KilnId kiln, const std::string& label, ThermocoupleType thermocouple) {
    return good(m_notebook->writer().add(Probe{{}, kiln, label, thermocouple, "top", {}, {}}));
}

FiringId NotebookOnDisk::addFiring(KilnId kiln, const PastFiring& wanted) {
    const Curve curve = wanted.curve.empty() ? crystalCurve(wanted.began) : wanted.curve;
    auto writer = m_notebook->writer();
    Firing firing = firingFrom(kiln, wanted.title, wanted.began);
    firing.plan = wanted.plan;
    if (!wanted.live)
        firing.ended = curve.back().at;
    const FiringId id = good(writer.add(firing));
    const ChannelId channel = good(writer.add(Channel{{}, id, Quantity::temperature, "T1", wanted.probe}));
    std::vector<Reading> readings;
    for (const auto& point : curve)
        readings.push_back({channel, point.at, point.temperature.celsius(), Origin::instrument, false});
    EXPECT_EQ(good(writer.add(readings)), readings.size());
    const PackId pack =
        good(writer.add(Pack{{}, id, "middle shelf", ConeType::selfSupporting, {"8", "9", "10"}, false}));
    const auto peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature);
    good(writer.add(Look{{}, pack, peak->at - std::chrono::minutes(20), "8", 6, false, false}));
    good(writer.add(Look{{}, pack, peak->at, "9", 6, false, false}));
    return id;
}

PieceId NotebookOnDisk::addPiece(FiringId firing, const std::string& name, const std::string& glaze,
                                 bool sagger) {
    return good(m_notebook->writer().add(Piece{{}, firing, name, glaze, "2", true, sagger}));
}

std::vector<Piece> NotebookOnDisk::pieces(FiringId firing) {
    return good(m_notebook->reader().pieces(firing));
}

std::vector<Outcome> NotebookOnDisk::outcomes(FiringId firing) {
    return good(m_notebook->reader().outcomes(firing));
}

void present(QWidget& widget, int width, int height) {
    widget.resize(width, height);
    widget.show();
    widget.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&widget));
}

void type(const QString& text) {
    for (const QChar c : text) {
        ASSERT_NE(QApplication::focusWidget(), nullptr);
        QTest::sendKeyEvent(QTest::Click, QApplication::focusWidget(), Qt::Key_unknown, c, Qt::NoModifier);
    }
}

void press(int key, Qt::KeyboardModifiers modifiers) {
    auto* focused = QApplication::focusWidget();
    auto* takes = focused ? focused : QApplication::activeWindow(); // as Qt itself hands keys on
    ASSERT_NE(takes, nullptr);
    QTest::keyClick(takes, static_cast<Qt::Key>(key), modifiers);
    QCoreApplication::processEvents(); // delegates take Enter from the queue
}

void expectUsableByKeyboard(QWidget& page) {
    QList<QWidget*> wanted;
    for (auto* widget : page.findChildren<QWidget*>())
        if (widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus) &&
            widget->focusProxy() == nullptr)
            wanted << widget;
    for (auto* widget : wanted) {
        const auto* told = QAccessible::queryAccessibleInterface(widget);
        EXPECT_TRUE(told && !told->text(QAccessible::Name).isEmpty())
            << widget->metaObject()->className() << " " << widget->objectName().toStdString();
    }
    QSet<const QWidget*> reached;
    for (qsizetype i = 0; i < wanted.size() * 2 + 2; ++i) {
        press(Qt::Key_Tab);
        reached.insert(QApplication::focusWidget());
    }
    for (auto* widget : wanted)
        EXPECT_TRUE(reached.contains(widget))
            << widget->metaObject()->className() << " " << widget->accessibleName().toStdString();
}

} // namespace ringhold::test
