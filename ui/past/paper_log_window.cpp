#include "ui/past/paper_log_window.h"

#include "ui/common/entry_table.h"
#include "ui/common/words_on_page.h"
#include "ui/past/paper_log_model.h"
#include "ui/session/notebook.h"
#include "ui/session/paper_lines.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

namespace {

/// Enter goes through what can be typed, and past what it will be.
class PaperTable : public EntryTable {
  public:
    using EntryTable::EntryTable;

  protected:
    Group groupOf(int) const override { return {0, static_cast<int>(PaperColumn::line)}; }
};

} // namespace

Result<PaperLogWindow*> PaperLogWindow::open(Notebook& notebook, FiringId firing, QWidget* parent) {
    const auto context = paperContext(notebook, firing);
    if (!context)
        return context.error();
    auto* window = new PaperLogWindow(notebook, firing, *context, parent);
    window->setAttribute(Qt::WA_DeleteOnClose);
    window->show();
    return window;
}

PaperLogWindow::PaperLogWindow(Notebook& notebook, FiringId firing, PaperContext context, QWidget* parent)
    : QDialog(parent), m_notebook(notebook), m_firing(firing),
      m_model(new PaperLogModel(std::move(context), notebook.preferences(), this)), m_table(new PaperTable),
      m_said(new Remark(Remark::Kind::plain)), m_trouble(new Remark(Remark::Kind::warning)),
      m_write(new QPushButton(tr("&Write into the firing"))) {
    setWindowTitle(tr("From a paper log"));
    auto* column = new QVBoxLayout(this);
    column->addWidget(
        softLabel(tr("A row for each line of the sheet, in its order; Enter goes on. A time that "
                     "is earlier than the one above is of the next day. The third column takes "
                     "what the writing line takes: “damper: half open”, “10 3.5”, a note.")));
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Lines of the paper log"));
    m_table->setColumns({{8, 0}, {11, 0}, {14, 2}, {18, 3}});
    column->addWidget(m_table, 1);
    column->addWidget(m_trouble);
    auto* foot = new QHBoxLayout;
    foot->addWidget(m_said, 1);
    foot->addStretch();
    auto* close = new QPushButton(tr("&Close"));
    for (auto* button : {m_write, close}) {
        button->setAutoDefault(false);
        foot->addWidget(button);
    }
    column->addLayout(foot);
    resize(820, 480);
    connect(m_write, &QPushButton::clicked, this, &PaperLogWindow::write);
    connect(close, &QPushButton::clicked, this, &PaperLogWindow::reject);
    connect(m_model, &PaperLogModel::changed, this, &PaperLogWindow::tell);
    m_table->setCurrentIndex(m_model->index(0, 0));
    m_table->setFocus();
    tell();
}

void PaperLogWindow::tell() {
    m_warned = false;
    const auto lines = m_model->lines().size();
    m_write->setEnabled(lines > 0);
    const int faults = m_model->faults();
    QString said = m_model->isEmpty() ? QString() : tr("Lines to write: %1").arg(lines);
    if (faults > 0)
        said += QStringLiteral(" · ") + tr("rows not understood: %1").arg(faults);
    m_said->say(said);
}

void PaperLogWindow::write() {
    const auto lines = m_model->lines();
    const auto written = writePaperLines(m_notebook, m_firing, lines);
    m_trouble->say(written.trouble ? QString() : QString::fromStdString(written.trouble.error().text()));
    m_model->drop(written.lines);
    if (written.trouble)
        m_said->say(tr("Lines written: %1").arg(written.lines));
}

void PaperLogWindow::reject() {
    if (!m_model->isEmpty() && !m_warned) {
        m_trouble->say(tr("There are rows that are not written. Close again to leave them."));
        m_warned = true;
        return;
    }
    QDialog::reject();
}

} // namespace ringhold
