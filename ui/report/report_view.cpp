#include "ui/report/report_view.h"

#include "core/report/book_report.h"
#include "ui/common/word_style.h"
#include "ui/common/words_on_page.h"
#include "ui/report/report_pane.h"
#include "ui/report/report_photos.h"
#include "ui/session/notebook.h"

#include <QVBoxLayout>

namespace ringhold {

namespace {

/// By a connection of its own, so that it may run in any thread.
Result<ReportContent> readReport(const std::filesystem::path& file, FiringId firing, const WordStyle& style) {
    const auto book = Book::open(file, Access::read);
    if (!book)
        return book.error();
    auto content = reportFromBook(*book, firing, style);
    if (content)
        shrinkPhotos(*content);
    return content;
}

} // namespace

ReportView::ReportView(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_state(new Remark(Remark::Kind::plain)),
      m_trouble(new Remark(Remark::Kind::warning)), m_pane(new ReportPane) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_trouble);
    column->addWidget(m_state);
    column->addWidget(m_pane, 1);
    setFocusProxy(m_pane);
    show(std::nullopt);
}

void ReportView::show(std::optional<FiringId> firing) {
    const bool another = firing != m_firing;
    m_firing = firing;
    m_trouble->say({});
    if (another || !firing)
        m_pane->clear();
    if (firing)
        return read();
    m_work.forget();
    m_state->say(tr("Open a firing to read its report."));
}

void ReportView::read() {
    m_state->say(m_pane->isEmpty() ? tr("The report is being written …") : QString());
    m_work.ask([file = m_notebook.file(), firing = *m_firing,
                style = styleOf(m_notebook.preferences())] { return readReport(file, firing, style); },
               [this](const Result<ReportContent>& report) {
                   m_state->say({});
                   m_trouble->say(report ? QString() : QString::fromStdString(report.error().text()));
                   if (report)
                       m_pane->setContent(*report);
                   else
                       m_pane->clear();
               });
}

} // namespace ringhold
