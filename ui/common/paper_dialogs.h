// Dialogs on the way to paper. They stop nobody: the window beneath goes on working.
#pragma once

#include <QString>

#include <functional>
#include <memory>

class QPrinter;
class QWidget;

namespace ringhold {

/// `title` as the name of a PDF in the potter's folder of documents, without what file systems refuse.
QString pdfNamed(const QString& title);

/// Asks where a PDF is to go; `chosen` hears the file, or nothing is called when the potter changes his mind.
void askForPdf(QWidget* parent, const QString& title, const QString& proposed,
               std::function<void(const QString&)> chosen);

/// Asks which printer and which pages; `go` is called when the printer is set.
void askForPrinter(QWidget* parent, std::shared_ptr<QPrinter> printer, std::function<void()> go);

} // namespace ringhold
