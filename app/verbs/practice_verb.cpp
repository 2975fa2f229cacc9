#include "app/practice/practice_run.h"
#include "app/system_clock.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "app/window/window_run.h"

#include <CLI/CLI.hpp>
#include <QStandardPaths>

#include <filesystem>

namespace ringhold {

namespace {

/// A whole firing of the practice kiln.
class PracticeVerb final : public Verb {
  public:
    std::string name() const override { return "practice"; }
    std::string summary() const override { return "A whole firing on the practice kiln"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    std::string m_book;
    std::uint64_t m_seed = 1;
    double m_speed = 240;
    bool m_headless = false;
};

/// In the user's data folder, which is made if need be.
Result<std::filesystem::path> practiceBook() {
    const auto data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation).toStdString();
    const auto folder = std::filesystem::path(data) / "ringhold";
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error)
        return Error{ErrorKind::unwritable, error.message(), folder.string()};
    return folder / "practice.ringhold";
}

void PracticeVerb::declare(CLI::App& command) {
    command.add_option("--book", m_book, "The book (practice.ringhold in your data folder)")
        ->type_name("FILE");
    command.add_option("--seed", m_seed, "Which practice kiln: each has its own secrets (1)");
    addNumber(command, "--speed", m_speed, "Kiln seconds in a second, in the window (240)");
    command.add_flag("--headless", m_headless, "Without a window, as fast as the computer can");
}

Status PracticeVerb::run(Console& console) {
    if (m_book.empty()) {
        const auto standard = practiceBook();
        if (!standard)
            return standard.error();
        m_book = standard->string();
    }
    if (!m_headless)
        return runWindow(m_book, WindowPractice{m_seed, m_speed});
    const auto book = Book::open(m_book, Access::create);
    if (!book)
        return book.error();
    const auto run = PracticeRun::prepare(*book, m_seed, SystemClock().now(), console);
    return run ? run.value()->fire() : run.error();
}

} // namespace

std::unique_ptr<Verb> makePracticeVerb() {
    return std::make_unique<PracticeVerb>();
}

} // namespace ringhold
