#include "ui/report/report_pane.h"

#include "core/report/report_words.h"
#include "ui/report/report_layout.h"
#include "ui/report/report_pdf.h"
#include "ui/report/report_preview.h"

#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintDialog>
#include <QPrinter>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>

namespace ringhold {

namespace {

/// A title as a file name: without what file systems refuse.
QString fileNameFor(const QString& title) {
    QString name = title;
    for (const QChar refused : QStringLiteral("/\\:*?\"<>|"))
        name.replace(refused, u'-');
    return name + QStringLiteral(".pdf");
}

QString documentsFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

} // namespace

ReportPane::ReportPane(QWidget* parent)
    : QWidget(parent), m_paper(usualPaper()), m_preview(new ReportPreview(this)), m_bar(new QWidget(this)),
      m_pageLabel(new QLabel(m_bar)), m_paperBox(new QComboBox(m_bar)) {
    askForFile = [this](const QString& proposed) {
        return QFileDialog::getSaveFileName(this, tr("Save the report"), proposed, tr("PDF (*.pdf)"));
    };
    askForPrinter = [this](QPrinter& printer) {
        QPrintDialog dialog(&printer, this);
        dialog.setOption(QAbstractPrintDialog::PrintPageRange);
        return dialog.exec() == QDialog::Accepted;
    };
    buildBar();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_bar);
    column->addWidget(m_preview, 1);
    setFocusProxy(m_preview);
    connect(m_preview, &ReportPreview::pageChanged, this, &ReportPane::showPage);
    showPage();
}

QToolButton* ReportPane::button(const QString& words, const QString& tip, const QKeySequence& keys) {
    auto* made = new QToolButton(m_bar);
    made->setText(words);
    made->setAccessibleName(tip);
    made->setToolTip(
        keys.isEmpty() ? tip : tip + QStringLiteral(" (") + keys.toString(QKeySequence::NativeText) + u')');
    made->setShortcut(keys);
    m_bar->layout()->addWidget(made);
    return made;
}

void ReportPane::buildBar() {
    auto* row = new QHBoxLayout(m_bar);
    row->setContentsMargins(8, 4, 8, 4);
    m_back = button(QStringLiteral("‹"), tr("Page before"), {});
    row->addWidget(m_pageLabel);
    m_forth = button(QStringLiteral("›"), tr("Next page"), {});
    auto* width = button(tr("Width"), tr("Fit the width"), {});
    auto* whole = button(tr("Page"), tr("Fit the whole page"), {});
    row->addStretch(1);
    m_paperBox->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
    m_paperBox->setCurrentIndex(static_cast<int>(m_paper));
    m_paperBox->setAccessibleName(tr("Paper"));
    row->addWidget(m_paperBox);
    auto* pdf = button(tr("PDF…"), tr("Save as PDF"), QKeySequence::Save);
    auto* paper = button(tr("Print…"), tr("Print the report"), QKeySequence::Print);
    connect(m_back, &QToolButton::clicked, this, [this] { m_preview->setPage(m_preview->page() - 1); });
    connect(m_forth, &QToolButton::clicked, this, [this] { m_preview->setPage(m_preview->page() + 1); });
    connect(width, &QToolButton::clicked, this, [this] { m_preview->fit(ReportPreview::Fit::width); });
    connect(whole, &QToolButton::clicked, this, [this] { m_preview->fit(ReportPreview::Fit::page); });
    connect(m_paperBox, &QComboBox::currentIndexChanged, this,
            [this](int index) { setPaper(static_cast<Paper>(index)); });
    connect(pdf, &QToolButton::clicked, this, &ReportPane::savePdf);
    connect(paper, &QToolButton::clicked, this, &ReportPane::print);
}

void ReportPane::setContent(const ReportContent& content) {
    m_content = std::make_shared<const ReportContent>(content);
    layOut();
}

void ReportPane::setPaper(Paper paper) {
    if (paper == m_paper)
        return;
    m_paper = paper;
    m_paperBox->setCurrentIndex(static_cast<int>(paper));
    layOut();
}

void ReportPane::layOut() {
    if (m_content)
        m_preview->setDocument(layOutReport(*m_content, m_paper));
}

void ReportPane::showPage() {
    const int count = m_preview->pageCount();
    m_pageLabel->setText(count > 0 ? tr("page %1 of %2").arg(m_preview->page() + 1).arg(count) : QString());
    m_back->setEnabled(m_preview->page() > 0);
    m_forth->setEnabled(m_preview->page() + 1 < count);
}

void ReportPane::savePdf() {
    if (!m_content)
        return;
    const QString title = QString::fromStdString(titleWords(*m_content));
    const QString file = askForFile(documentsFolder() + u'/' + fileNameFor(title));
    if (file.isEmpty())
        return;
    const auto written = writePdf(*m_preview->document(), file.toStdString());
    Q_EMIT told(written ? tr("Saved as %1").arg(file) : QString::fromStdString(written.error().text()));
}

void ReportPane::print() {
    if (!m_content)
        return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(pageSize(m_paper));
    printer.setDocName(QString::fromStdString(titleWords(*m_content)));
    if (!askForPrinter(printer))
        return;
    const auto document = layOutReport(*m_content, paperOf(printer.pageLayout().pageSize()));
    const auto printed = ringhold::print(document, printer);
    Q_EMIT told(printed ? tr("Printed") : QString::fromStdString(printed.error().text()));
}

} // namespace ringhold
