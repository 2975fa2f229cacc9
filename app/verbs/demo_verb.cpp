#include "app/demo/demo_book.h"
#include "app/verbs/headless_application.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Makes a book to look around in.
class DemoVerb final : public Verb {
  public:
    std::string name() const override { return "demo"; }
    std::string summary() const override { return "Make the book of an invented studio, to look around in"; }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    std::string m_book;
    std::uint64_t m_seed = 1;
};

void DemoVerb::declare(CLI::App& command) {
    addBook(command, m_book)->description("The book to make, one file");
    command.add_option("--seed", m_seed, "Which studio: each has its own probes, noise and luck (1)");
    command.footer("Everything in this book is invented: studio, kilns, glazes, recipes, ware. The firings "
                   "are those of practice\n"
                   "kilns, twelve of about 16 h each with the faults of real ones; outcomes follow from the "
                   "temperatures\n"
                   "that the ware felt by a simple model with chance in it (growth at the glaze's own rate, "
                   "seeds fewer the\n"
                   "hotter the peak, running above it); photos are drawn. Nothing in it is a recipe or a "
                   "result to rely on.");
}

Status DemoVerb::run(Console& console) {
    const HeadlessApplication application;
    const auto book = Book::open(m_book, Access::create);
    if (!book)
        return book.error();
    const auto tell = [&](const std::string& title, std::size_t left) {
        console.out << "Fired: " << title << (left > 0 ? "" : ". All done.") << std::endl;
    };
    return writeDemoBook(*book, demoStudio(m_seed), m_seed, tell);
}

} // namespace

std::unique_ptr<Verb> makeDemoVerb() {
    return std::make_unique<DemoVerb>();
}

} // namespace ringhold
