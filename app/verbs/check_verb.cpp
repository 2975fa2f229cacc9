#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"
#include "core/book/check.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace ringhold {

namespace {

/// Looks through a whole book for damage.
class CheckVerb final : public Verb {
  public:
    std::string name() const override { return "check"; }
    std::string summary() const override { return "Look through a whole book for damage"; }
    void declare(CLI::App& command) override { addBook(command, m_book); }
    Status run(Console& console) override;

  private:
    std::string m_book;
};

Status CheckVerb::run(Console& console) {
    const auto findings = checkBook(m_book);
    if (!findings)
        return findings.error();
    for (const auto& finding : *findings)
        console.out << fmt::format("{}: {}\n", ringhold::name(finding.kind), finding.what);
    if (!findings->empty())
        return Error{ErrorKind::failed, fmt::format("the book is not whole: {} findings", findings->size()),
                     m_book};
    console.out << m_book << " is whole\n";
    return {};
}

} // namespace

std::unique_ptr<Verb> makeCheckVerb() {
    return std::make_unique<CheckVerb>();
}

} // namespace ringhold
