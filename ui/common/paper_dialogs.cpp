#include "ui/common/paper_dialogs.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QPrintDialog>
#include <QPrinter>
#include <QStandardPaths>

namespace ringhold {

QString pdfNamed(const QString& title) {
    QString name = title;
    for (const QChar refused : QStringLiteral("/\\:*?\"<>|"))
        name.replace(refused, u'-');
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) + u'/' + name +
           QStringLiteral(".pdf");
}

void askForPdf(QWidget* parent, const QString& title, const QString& proposed,
               std::function<void(const QString&)> chosen) {
    auto* dialog = new QFileDialog(parent, title, QFileInfo(proposed).path(),
                                   QCoreApplication::translate("ringhold::PaperDialogs", "PDF (*.pdf)"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("pdf"));
    dialog->selectFile(QFileInfo(proposed).fileName());
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(chosen));
    dialog->open();
}

void askForPrinter(QWidget* parent, std::shared_ptr<QPrinter> printer, std::function<void()> go) {
    auto* dialog = new QPrintDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setOption(QAbstractPrintDialog::PrintPageRange);
    QObject::connect(dialog, qOverload<QPrinter*>(&QPrintDialog::accepted), parent,
                     [printer, go = std::move(go)](QPrinter*) { go(); });
    QObject::connect(dialog, &QObject::destroyed, [printer] {}); // the dialog never outlives its printer
    dialog->open();
}

} // namespace ringhold
