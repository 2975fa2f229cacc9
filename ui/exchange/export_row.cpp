#include "ui/exchange/export_row.h"

#include "core/exchange/csv_export.h"
#include "core/exchange/firing_json.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"

#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QPushButton>

namespace ringhold {

ExportRow::ExportRow(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_csv(new QPushButton(tr("Readings as CS&V …"))),
      m_json(new QPushButton(tr("All of it as &JSON …"))), m_where(softLabel()),
      m_trouble(new Remark(Remark::Kind::warning)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_where, 1);
    row->addWidget(m_trouble, 1);
    for (auto* button : {m_csv, m_json}) {
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    m_csv->setAccessibleName(tr("Write the readings as CSV"));
    m_json->setAccessibleName(tr("Write the whole firing as JSON"));
    connect(m_csv, &QPushButton::clicked, this, [this] { ask(QStringLiteral("csv"), tr("CSV (*.csv)")); });
    connect(m_json, &QPushButton::clicked, this,
            [this] { ask(QStringLiteral("json"), tr("JSON (*.json)")); });
    show(std::nullopt);
}

void ExportRow::show(std::optional<FiringId> firing) {
    if (firing != m_firing) {
        m_where->clear();
        m_trouble->say({});
    }
    m_firing = firing;
    setEnabled(firing.has_value());
}

void ExportRow::ask(const QString& ending, const QString& filter) {
    auto* dialog = new QFileDialog(this, tr("Write the firing to a file"), {}, filter);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(ending);
    dialog->selectFile(QStringLiteral("firing-%1.%2").arg(static_cast<qlonglong>(*m_firing)).arg(ending));
    connect(dialog, &QFileDialog::fileSelected, this, &ExportRow::write);
    dialog->open();
}

void ExportRow::write(const QString& file) {
    if (!m_firing)
        return;
    const auto record = m_notebook.reader().whole(*m_firing, Pictures::with);
    const bool json = file.endsWith(QLatin1String(".json"), Qt::CaseInsensitive);
    const Status written = !record ? Status(record.error())
                           : json  ? writeFiring(file.toStdString(), *record)
                                   : writeCsv(file.toStdString(), *record);
    m_trouble->say(written ? QString() : QString::fromStdString(written.error().text()));
    m_where->setText(written ? tr("Written to %1").arg(QDir::toNativeSeparators(file)) : QString());
}

} // namespace ringhold
