#include "ui/plan/plan_card_window.h"

#include "ui/plan/plan_card.h"
#include "ui/session/preferences.h"

#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

namespace ringhold {

PlanCardWindow::PlanCardWindow(const Plan& plan, const PlanBasis& basis, Instant written,
                               const Preferences& preferences, QWidget* parent)
    : QDialog(parent), m_plan(plan), m_basis(basis), m_written(written), m_preferences(preferences),
      m_printer(std::make_unique<QPrinter>(QPrinter::HighResolution)) {
    setObjectName(QStringLiteral("planCardWindow"));
    setWindowTitle(tr("Plan card"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* layout = new QHBoxLayout(this);
    layout->addWidget(makeChoices());
    m_preview = new QPrintPreviewWidget(m_printer.get(), this);
    m_preview->setAccessibleName(tr("The card as it will be printed"));
    connect(m_preview, &QPrintPreviewWidget::paintRequested, this,
            [this](QPrinter* printer) { paintPlanCard(*printer, words()); });
    layout->addWidget(m_preview, 1);
    resize(900, 600);
    refresh();
}

PlanCardWindow::~PlanCardWindow() = default;

QComboBox* PlanCardWindow::addChoice(const QString& objectName, const QString& name,
                                     const QStringList& texts) {
    auto* box = new QComboBox(this);
    box->setObjectName(objectName);
    box->setAccessibleName(name);
    box->addItems(texts);
    connect(box, &QComboBox::activated, this, &PlanCardWindow::refresh);
    return box;
}

QWidget* PlanCardWindow::makeChoices() {
    auto* choices = new QWidget(this);
    choices->setFixedWidth(250);
    auto* column = new QVBoxLayout(choices);
    column->setContentsMargins(0, 0, 0, 0);
    m_correction = addChoice(QStringLiteral("cardCorrection"), tr("Which set points are corrected"),
                             {tr("cone waits only"), tr("all set points"), tr("nothing")});
    m_size = addChoice(QStringLiteral("cardSize"), tr("Paper size"), {QStringLiteral("A4"), tr("Letter")});
    m_size->setCurrentIndex(usualPageSize().id() == QPageSize::Letter ? 1 : 0);
    m_said = new QLabel(choices);
    m_said->setObjectName(QStringLiteral("cardSaid"));
    m_said->setWordWrap(true);
    m_said->hide();
    auto* print = new QPushButton(tr("Print …"), choices);
    auto* save = new QPushButton(tr("Write a PDF …"), choices);
    save->setObjectName(QStringLiteral("cardPdf"));
    auto* close = new QPushButton(tr("Close"), choices);
    connect(print, &QPushButton::clicked, this, &PlanCardWindow::askForPrinter);
    connect(save, &QPushButton::clicked, this, &PlanCardWindow::askForFile);
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    auto* correctionLabel = new QLabel(tr("&Correct by the probe's offset"), choices);
    correctionLabel->setBuddy(m_correction);
    auto* sizeLabel = new QLabel(tr("&Paper"), choices);
    sizeLabel->setBuddy(m_size);
    for (QWidget* each : std::initializer_list<QWidget*>{correctionLabel, m_correction, sizeLabel, m_size})
        column->addWidget(each);
    column->addStretch(1);
    for (QWidget* each : std::initializer_list<QWidget*>{m_said, print, save, close})
        column->addWidget(each);
    return choices;
}

CardCorrection PlanCardWindow::correction() const {
    constexpr CardCorrection byRow[] = {CardCorrection::coneWaits, CardCorrection::all, CardCorrection::none};
    return byRow[m_correction->currentIndex()];
}

QPageSize PlanCardWindow::pageSize() const {
    return QPageSize(m_size->currentIndex() == 0 ? QPageSize::A4 : QPageSize::Letter);
}

PlanCardWords PlanCardWindow::words() const {
    const auto planned = planCurve(m_plan, contextOf(m_basis, m_plan));
    const auto card = planCard(m_plan, m_basis.offset.prior, correction(), &planned);
    return planCardWords({card, m_basis, m_written}, m_preferences);
}

void PlanCardWindow::refresh() {
    m_printer->setPageLayout(planCardLayout(pageSize()));
    m_printer->setDocName(QString::fromStdString(m_plan.name));
    m_preview->updatePreview();
}

void PlanCardWindow::writePdf(const QString& file) {
    const auto written = writePlanCard(file.toStdString(), words(), pageSize());
    if (written)
        say(tr("Written to %1").arg(file), false);
    else
        say(tr("Not written: %1").arg(QString::fromStdString(written.error().text())), true);
}

void PlanCardWindow::askForFile() {
    auto* dialog = new QFileDialog(this, tr("Write the plan card"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setNameFilter(QStringLiteral("PDF (*.pdf)"));
    dialog->setDefaultSuffix(QStringLiteral("pdf"));
    connect(dialog, &QFileDialog::fileSelected, this, &PlanCardWindow::writePdf);
    dialog->show();
}

void PlanCardWindow::askForPrinter() {
    auto* dialog = new QPrintDialog(m_printer.get(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, qOverload<QPrinter*>(&QPrintDialog::accepted), this, [this](QPrinter* printer) {
        if (!paintPlanCard(*printer, words()))
            say(tr("The printer cannot be reached."), true);
    });
    dialog->show();
}

void PlanCardWindow::say(const QString& text, bool wrong) {
    m_said->setProperty("ground", wrong ? QStringLiteral("warning") : QStringLiteral("forecast"));
    m_said->style()->unpolish(m_said);
    m_said->style()->polish(m_said);
    m_said->setText(text);
    m_said->show();
}

} // namespace ringhold
