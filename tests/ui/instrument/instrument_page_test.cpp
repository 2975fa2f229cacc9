// The chooser by clicks and keys, with instruments that say what the test wants.
#include "core/instrument/line_feed.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/instrument/instrument_page.h"
#include "ui/instrument/raw_lines_model.h"
#include "ui/session/instrument_of_firing.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

/// Says what it is told to say.
class Mouthpiece final : public Instrument {
  public:
    explicit Mouthpiece(Mouthpiece*& open) : m_open(open) {}
    ~Mouthpiece() override { close(); }
    Status open(InstrumentListener& listener) override {
        m_listener = &listener;
        m_open = this;
        listener.onLink(LinkState::waiting, {});
        return {};
    }
    void close() override {
        m_listener = nullptr;
        if (m_open == this)
            m_open = nullptr;
    }
    std::optional<Instant> advance(Instant) override { return std::nullopt; }
    std::string description() const override { return "mouthpiece"; }
    void say(const char* line, Instant at) {
        m_listener->onLink(LinkState::connected, {});
        m_feed.feed(std::string(line) + "\n", at, *m_listener);
    }

  private:
    Mouthpiece*& m_open;
    InstrumentListener* m_listener = nullptr;
    LineFeed m_feed{LineFormat{}, StreamStart::lineStart};
};

class Mouthpieces final : public InstrumentFactory {
  public:
    std::vector<InstrumentKind> kinds() const override {
        return {{"serial", "serial:/dev/ttyUSB0"}, {"tcp", "tcp:10.0.0.7:4001"}};
    }
    std::vector<InstrumentFound> found() const override { return {{"serial", "/dev/ttyUSB0", "USB"}}; }
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec& spec) override {
        if (spec.target.empty())
            return Error{ErrorKind::badInput, spec.scheme + ": which one?"};
        return std::unique_ptr<Instrument>(std::make_unique<Mouthpiece>(open));
    }
    Mouthpiece* open = nullptr; ///< the one that was opened last and not closed since
};

class InstrumentChooser : public testing::Test {
  protected:
    InstrumentChooser() {
        auto opened = Notebook::open(folder / "studio.ringhold", factory, clock);
        EXPECT_TRUE(opened.ok());
        notebook = std::move(*opened);
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        window = std::make_unique<MainWindow>(*notebook, theme);
        test::present(*window, 1280, 800);
    }

    InstrumentPage& chooser() {
        test::press(Qt::Key_I, Qt::ControlModifier);
        auto* page = window->findChild<InstrumentPage*>();
        EXPECT_TRUE(page->isVisible());
        return *page;
    }
    void click(const QString& words) {
        for (auto* button : window->findChildren<QPushButton*>())
            if (button->isVisible() && button->text().remove(QLatin1Char('&')) == words)
                return QTest::mouseClick(button, Qt::LeftButton);
        ADD_FAILURE() << "no button " << words.toStdString();
    }
    QComboBox* source() {
        for (auto* box : window->findChildren<QComboBox*>())
            if (box->accessibleName() == QStringLiteral("Instrument"))
                return box;
        return nullptr;
    }
    FiringSession& beginFiring(const QString& instrument) {
        Kiln kiln;
        kiln.name = "Heron";
        NewFiring firing;
        firing.kiln = *notebook->writer().add(kiln);
        firing.instrument = instrument;
        const auto begun = notebook->begin(firing);
        EXPECT_TRUE(begun.ok());
        QApplication::processEvents();
        return **begun;
    }

    test::BookFolder folder;
    test::SetClock clock{test::noonOfMarch(3)};
    Mouthpieces factory;
    std::unique_ptr<Notebook> notebook;
    Theme theme;
    std::unique_ptr<MainWindow> window;
};

TEST_F(InstrumentChooser, APortIsListenedToAndUsedForTheFiringToBegin) {
    auto& page = chooser();
    EXPECT_EQ(page.specification(), QString());
    page.findChild<QListWidget*>()->setFocus();
    test::press(Qt::Key_Down);
    EXPECT_EQ(page.specification(), QStringLiteral("serial:/dev/ttyUSB0"));
    click(QStringLiteral("Listen"));
    ASSERT_TRUE(factory.open);
    factory.open->say("1043.2 C", clock.now());
    factory.open->say("what?", clock.now());
    const auto* lines = page.findChild<RawLinesModel*>();
    EXPECT_EQ(lines->rowCount(), 2);
    EXPECT_EQ(lines->unread(), 1);
    keepScreens(*window, theme, QStringLiteral("instrument"));
    click(QStringLiteral("Use it"));
    EXPECT_FALSE(factory.open); // let go of
    EXPECT_FALSE(page.isVisible());
    EXPECT_EQ(source()->currentText(), QStringLiteral("serial:/dev/ttyUSB0"));
}

TEST_F(InstrumentChooser, WhatCannotBeIsSaidAndThePageStays) {
    auto& page = chooser();
    page.findChild<QListWidget*>()->setCurrentRow(2);
    click(QStringLiteral("Use it"));
    EXPECT_TRUE(page.isVisible());
    click(QStringLiteral("Listen"));
    EXPECT_FALSE(factory.open);
    bool said = false;
    for (const auto* label : page.findChildren<QLabel*>())
        said = said || label->text() == QStringLiteral("tcp: which one?");
    EXPECT_TRUE(said);
    test::press(Qt::Key_Escape);
    EXPECT_FALSE(page.isVisible());
}

TEST_F(InstrumentChooser, ALiveFiringTakesAnother) {
    auto& session = beginFiring({});
    EXPECT_TRUE(session.instrumentDescription().isEmpty());
    auto& page = chooser();
    page.findChild<QListWidget*>()->setCurrentRow(1);
    click(QStringLiteral("Use it"));
    ASSERT_TRUE(factory.open);
    factory.open->say("400", clock.now());
    EXPECT_EQ(session.firing().controlCurve().size(), 1u);
    EXPECT_EQ(instrumentOf(*notebook, session.record().kiln.id), QStringLiteral("serial:/dev/ttyUSB0"));

    // it is shown without being opened a second time
    auto* own = factory.open;
    chooser();
    EXPECT_EQ(page.specification(), QStringLiteral("serial:/dev/ttyUSB0"));
    click(QStringLiteral("Listen"));
    EXPECT_EQ(factory.open, own);
    clock.set(clock.now() + std::chrono::minutes(1));
    own->say("401", clock.now());
    EXPECT_EQ(page.findChild<RawLinesModel*>()->rowCount(), 1);
    EXPECT_EQ(session.firing().controlCurve().size(), 2u);

    // and by hand again: what was logged stays
    page.findChild<QListWidget*>()->setCurrentRow(0);
    click(QStringLiteral("Use it"));
    EXPECT_TRUE(session.instrumentDescription().isEmpty());
    EXPECT_EQ(session.firing().controlCurve().size(), 2u);
}

TEST_F(InstrumentChooser, TheFiringMayEndMeanwhile) {
    auto& session = beginFiring(QStringLiteral("tcp:10.0.0.7:4001"));
    auto& page = chooser();
    EXPECT_EQ(page.specification(), QStringLiteral("tcp:10.0.0.7:4001"));
    ASSERT_TRUE(notebook->end(session).ok());
    chooser();
    click(QStringLiteral("Back"));
    EXPECT_FALSE(page.isVisible());
}

TEST_F(InstrumentChooser, IsUsableByKeyboard) {
    auto& page = chooser();
    page.findChild<QListWidget*>()->setCurrentRow(1);
    test::expectUsableByKeyboard(page);
}

} // namespace
} // namespace ringhold
