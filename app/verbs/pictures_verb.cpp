#include "app/instruments/app_instrument_factory.h"
#include "app/pictures/page_pictures.h"
#include "app/pictures/silent_instruments.h"
#include "app/pictures/stepped_clock.h"
#include "app/pictures/unheard_sounder.h"
#include "app/system_clock.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "app/window/practice_start.h"
#include "core/book/copy.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <CLI/CLI.hpp>
#include <QApplication>
#include <QTemporaryDir>
#include <fmt/format.h>

#include <clocale>

namespace ringhold {

namespace {

/// In the midst of the cone wait, as a rule.
constexpr auto intoTheFiring = std::chrono::minutes(7 * 60 + 50);

/// Every page of the window on a book, in both themes.
class PicturesVerb final : public Verb {
  public:
    std::string name() const override { return "pictures"; }
    std::string summary() const override { return "Pictures of every page on a book, without a display"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<int> picture(const std::string& copy) const;

    std::string m_book;
    std::string m_to;
    std::uint64_t m_seed = 1;
};

void PicturesVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    command.add_option("--to", m_to, "The folder to write them to, made if need be")
        ->type_name("FOLDER")
        ->required();
    command.add_option("--seed", m_seed,
                       "The practice kiln that is in fire where no kiln of the book is (1)");
}

/// The book itself stays as it is: a firing that is not in it may be in the pictures.
Result<int> PicturesVerb::picture(const std::string& copy) const {
    SteppedClock clock(SystemClock().now());
    SilentInstruments instruments(AppInstrumentFactory(clock).kinds());
    Theme theme;
    theme.wear(*qApp);
    auto notebook = Notebook::open(copy, instruments, clock);
    if (!notebook)
        return notebook.error();
    (*notebook)->resume();
    std::optional<PracticeStarted> practice;
    if ((*notebook)->sessions().empty()) {
        const auto begun = beginPractice(**notebook, {m_seed, 1.0});
        if (!begun)
            return begun.error();
        practice = *begun;
    }
    UnheardSounder sounder;
    MainWindow window(**notebook, theme, &sounder);
    if (practice) { // before anybody sees it
        liveThrough(*practice->kiln, clock, intoTheFiring);
        answerAll(**notebook, window);
    }
    window.resize(1280, 800);
    window.show();
    QApplication::processEvents();
    return picturePages(window, theme, {QString::fromStdString(m_to)});
}

Status PicturesVerb::run(Console& console) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    int argumentCount = 1;
    char program[] = "ringhold";
    char* arguments[] = {program, nullptr};
    const QApplication application(argumentCount, arguments);
    std::setlocale(LC_NUMERIC, "C"); // which Qt has set to the computer's
    const QTemporaryDir folder;
    const std::string copy = folder.filePath(QStringLiteral("pictured.ringhold")).toStdString();
    if (const auto copied = copyBook(m_book, copy); !copied)
        return copied;
    const auto taken = picture(copy);
    if (!taken)
        return taken.error();
    console.out << fmt::format("{} pictures of {} are in {}\n", *taken, m_book, m_to);
    return {};
}

} // namespace

std::unique_ptr<Verb> makePicturesVerb() {
    return std::make_unique<PicturesVerb>();
}

} // namespace ringhold
