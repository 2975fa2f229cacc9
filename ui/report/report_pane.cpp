#include "ui/report/report_pane.h"

#include "core/report/report_words.h"
#include "ui/common/paper_dialogs.h"
#include "ui/common/words_on_page.h"
#include "ui/report/report_layout.h"
#include "ui/report/report_pdf.h"
#include "ui/report/report_preview.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrinter>
#include <QToolButton>
#include <QVBoxLayout>

namespace ringhold {

ReportPane::ReportPane(QWidget* parent)
    : QWidget(parent), m_paper(usualPaper()), m_preview(new ReportPreview(this)), m_bar(new QWidget(this)),
      m_pageLabel(new QLabel(m_bar)), m_paperBox(new QComboBox(m_bar)), m_said(softLabel()) {
    askForFile = [this](const QString& proposed, std::function<void(const QString&)> chosen) {
        askForPdf(this, tr("Save as PDF"), proposed, std::move(chosen));
    };
    askForPrinter = [this](std::shared_ptr<QPrinter> printer, std::function<void()> go) {
        ringhold::askForPrinter(this, std::move(printer), std::move(go));
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
    m_said->setWordWrap(false);
    m_said->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_said->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_said, 1);
    m_paperBox->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
    m_paperBox->setCurrentIndex(static_cast<int>(m_paper));
    m_paperBox->setAccessibleName(tr("Paper"));
    row->addWidget(m_paperBox);
    m_pdf = button(tr("PDF…"), tr("Save as PDF"), QKeySequence::Save);
    m_print = button(tr("Print…"), tr("Print"), QKeySequence::Print);
    connect(m_back, &QToolButton::clicked, this, [this] { m_preview->setPage(m_preview->page() - 1); });
    connect(m_forth, &QToolButton::clicked, this, [this] { m_preview->setPage(m_preview->page() + 1); });
    connect(width, &QToolButton::clicked, this, [this] { m_preview->fit(ReportPreview::Fit::width); });
    connect(whole, &QToolButton::clicked, this, [this] { m_preview->fit(ReportPreview::Fit::page); });
    connect(m_paperBox, &QComboBox::currentIndexChanged, this,
            [this](int index) { setPaper(static_cast<Paper>(index)); });
    connect(m_pdf, &QToolButton::clicked, this, &ReportPane::savePdf);
    connect(m_print, &QToolButton::clicked, this, &ReportPane::print);
}

void ReportPane::setContent(const ReportContent& content) {
    setPages(QString::fromStdString(titleWords(content)),
             [shared = std::make_shared<const ReportContent>(content)](Paper paper) {
                 return layOutReport(*shared, paper);
             });
}

void ReportPane::setPages(const QString& title, LayOut layOut) {
    m_title = title;
    m_layOut = std::move(layOut);
    m_said->clear();
    layOutPages();
}

void ReportPane::clear() {
    m_layOut = nullptr;
    m_said->clear();
    m_preview->setDocument(std::nullopt);
}

void ReportPane::tell(const QString& words) {
    m_said->setText(words);
    m_said->setToolTip(words);
    Q_EMIT told(words);
}

void ReportPane::setPaper(Paper paper) {
    if (paper == m_paper)
        return;
    m_paper = paper;
    m_paperBox->setCurrentIndex(static_cast<int>(paper));
    layOutPages();
}

void ReportPane::layOutPages() {
    if (m_layOut)
        m_preview->setDocument(m_layOut(m_paper));
}

void ReportPane::showPage() {
    const int count = m_preview->pageCount();
    m_pageLabel->setText(count > 0 ? tr("page %1 of %2").arg(m_preview->page() + 1).arg(count) : QString());
    m_back->setEnabled(m_preview->page() > 0);
    m_forth->setEnabled(m_preview->page() + 1 < count);
    m_pdf->setEnabled(count > 0);
    m_print->setEnabled(count > 0);
}

void ReportPane::savePdf() {
    if (m_layOut)
        askForFile(pdfNamed(m_title), [this](const QString& file) { writeTo(file); });
}

void ReportPane::writeTo(const QString& file) {
    const auto written = writePdf(*m_preview->document(), file.toStdString());
    tell(written ? tr("Saved as %1").arg(file) : QString::fromStdString(written.error().text()));
}

void ReportPane::print() {
    if (!m_layOut)
        return;
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setPageSize(pageSize(m_paper));
    printer->setDocName(m_title);
    askForPrinter(printer, [this, printer = printer.get()] { printOn(*printer); });
}

void ReportPane::printOn(QPrinter& printer) {
    const auto document = m_layOut(paperOf(printer.pageLayout().pageSize()));
    const auto printed = ringhold::print(document, printer);
    tell(printed ? tr("Printed") : QString::fromStdString(printed.error().text()));
}

} // namespace ringhold
