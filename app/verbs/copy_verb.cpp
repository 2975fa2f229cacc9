#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "core/book/copy.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Copies a book, also one in use, to one file.
class CopyVerb final : public Verb {
  public:
    std::string name() const override { return "copy"; }
    std::string summary() const override { return "Copy a book, also one in use, to a new file"; }
    void declare(CLI::App& command) override {
        addBook(command, m_book);
        command.add_option("--to", m_to, "The copy; must not exist yet")->type_name("OUT")->required();
    }
    Status run(Console& console) override {
        if (const auto status = copyBook(m_book, m_to); !status)
            return status;
        console.out << m_book << " is copied to " << m_to << '\n';
        return {};
    }

  private:
    std::string m_book;
    std::string m_to;
};

} // namespace

std::unique_ptr<Verb> makeCopyVerb() {
    return std::make_unique<CopyVerb>();
}

} // namespace ringhold
