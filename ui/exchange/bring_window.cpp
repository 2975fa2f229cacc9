#include "ui/exchange/bring_window.h"

#include "core/book/firing_intake.h"
#include "ui/common/cell_delegate.h"
#include "ui/common/firing_words.h"
#include "ui/common/words_on_page.h"
#include "ui/exchange/column_fields.h"
#include "ui/exchange/preview_model.h"
#include "ui/session/notebook.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

namespace ringhold {

namespace {

/// "1 look", "3 looks"; empty for none.
QString counted(std::size_t count, const char* one, const char* many) {
    return count == 0 ? QString() : count == 1 ? BringWindow::tr(one) : BringWindow::tr(many).arg(count);
}

} // namespace

QString broughtWords(const BroughtFile& brought, const Preferences& preferences) {
    const auto& record = brought.record;
    const Instant last = record.readings.empty() ? record.firing.began : record.readings.back().at;
    const Instant ended = record.firing.ended.value_or(last);
    QStringList parts{counted(record.readings.size(), "1 reading", "%1 readings"),
                      BringWindow::tr("%1 %2, for %3")
                          .arg(preferences.date(record.firing.began),
                               preferences.clockTime(record.firing.began),
                               preferences.span(ended - record.firing.began)),
                      counted(record.looks.size(), "1 look", "%1 looks"),
                      counted(record.notes.size(), "1 note", "%1 notes"),
                      counted(record.pieces.size(), "1 piece", "%1 pieces"),
                      counted(record.photos.size(), "1 photo", "%1 photos"),
                      counted(record.glazeCards.size(), "1 glaze card", "%1 glaze cards"),
                      counted(brought.rowsSkipped, "1 row without a value", "%1 rows without a value")};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

BringWindow::BringWindow(Notebook& notebook, const Theme& theme, FileDraft draft, QWidget* parent)
    : QDialog(parent), m_notebook(notebook), m_draft(std::move(draft)), m_model(new PreviewModel(this)),
      m_table(new QTableView),
      m_columns(new ColumnFields(QString::fromStdString(notebook.preferences().zone()))),
      m_kiln(new QComboBox), m_title(new QLineEdit), m_what(new QLabel),
      m_left(new Remark(Remark::Kind::plain)), m_trouble(new Remark(Remark::Kind::warning)),
      m_keep(new QPushButton(tr("B&ring it in"))) {
    const QString name = QString::fromStdString(m_draft.file().filename().string());
    setWindowTitle(tr("Bring in %1").arg(name));
    setAttribute(Qt::WA_DeleteOnClose);
    resize(900, m_draft.isJson() ? 300 : 620);
    auto* column = new QVBoxLayout(this);
    column->addWidget(new Heading(theme, TextSize::title, tr("Bring in %1").arg(name)));
    column->addLayout(makeHead());
    column->addWidget(m_columns);
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("First rows of the file"));
    m_table->setItemDelegate(new CellDelegate(m_table));
    m_table->setTabKeyNavigation(false);
    m_table->setSelectionMode(QAbstractItemView::NoSelection);
    m_table->verticalHeader()->hide();
    column->addWidget(m_table, 1);
    m_columns->setVisible(!m_draft.isJson());
    m_table->setVisible(!m_draft.isJson());
    m_what->setWordWrap(true);
    for (QWidget* words : std::initializer_list<QWidget*>{m_what, m_left, m_trouble})
        column->addWidget(words);
    if (m_draft.isJson())
        column->addStretch(1);
    column->addLayout(makeFoot());
    m_columns->offer(m_draft.preview());
    connect(m_columns, &ColumnFields::changed, this, &BringWindow::reckon);
    connect(m_kiln, &QComboBox::editTextChanged, this, &BringWindow::reckon);
    connect(m_title, &QLineEdit::textChanged, this, &BringWindow::reckon);
    reckon();
}

/// The kiln and the title: a CSV tells neither, a JSON file both.
QLayout* BringWindow::makeHead() {
    auto* form = new QFormLayout;
    m_kiln->setEditable(true);
    m_kiln->setAccessibleName(tr("Kiln"));
    if (const auto kilns = m_notebook.reader().kilns())
        for (const auto& kiln : *kilns)
            m_kiln->addItem(QString::fromStdString(kiln.name));
    m_title->setAccessibleName(tr("Title"));
    m_draft.reckon(m_notebook.book());
    if (m_draft.isJson()) {
        m_kiln->setEditText({});
        if (const auto& brought = m_draft.brought()) {
            m_kiln->lineEdit()->setPlaceholderText(QString::fromStdString(brought->record.kiln.name));
            m_title->setPlaceholderText(QString::fromStdString(brought->record.firing.title));
        }
    } else {
        m_title->setText(QString::fromStdString(m_draft.file().stem().string()));
    }
    form->addRow(tr("&Kiln"), m_kiln);
    form->addRow(tr("T&itle"), m_title);
    return form;
}

QLayout* BringWindow::makeFoot() {
    auto* foot = new QHBoxLayout;
    foot->addStretch(1);
    auto* close = new QPushButton(tr("Close"));
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_keep, &QPushButton::clicked, this, &BringWindow::keep);
    foot->addWidget(close);
    foot->addWidget(m_keep);
    m_keep->setDefault(true);
    return foot;
}

void BringWindow::reckon() {
    auto options = m_columns->options();
    if (!options) {
        m_keep->setEnabled(false);
        return m_trouble->say(QString::fromStdString(options.error().text()));
    }
    m_draft.options = std::move(*options);
    m_draft.as.kiln = m_kiln->currentText().trimmed().toStdString();
    m_draft.as.title = m_title->text().trimmed().toStdString();
    m_draft.reckon(m_notebook.book());
    tell();
}

void BringWindow::tell() {
    m_model->show(m_draft.preview());
    m_table->resizeColumnsToContents();
    const auto& brought = m_draft.brought();
    m_keep->setEnabled(brought.has_value());
    m_keep->setText(m_draft.known() ? tr("B&ring it in once more") : tr("B&ring it in"));
    m_what->setText(brought ? broughtWords(*brought, m_notebook.preferences()) : QString());
    QStringList left;
    if (brought)
        for (const auto& header : brought->notTaken)
            left << QString::fromStdString(header);
    m_left->say(left.isEmpty() ? QString() : tr("Left out: %1.").arg(left.join(QStringLiteral(", "))));
    if (const auto& trouble = m_draft.trouble())
        return m_trouble->say(QString::fromStdString(trouble->what));
    const auto& known = m_draft.known();
    m_trouble->say(
        known ? tr("The book has this firing already: %1.").arg(firingWords(*known, m_notebook.preferences()))
              : QString());
}

void BringWindow::keep() {
    if (!m_draft.brought())
        return;
    const auto taken = takeIn(m_notebook.book(), m_draft.brought()->record);
    if (!taken)
        return m_trouble->say(QString::fromStdString(taken.error().text()));
    Q_EMIT m_notebook.bookChanged();
    Q_EMIT brought(static_cast<qlonglong>(taken->firing));
    accept();
}

} // namespace ringhold
