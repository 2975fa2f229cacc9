// Pages as a PDF, or on a printer. Needs a QGuiApplication, which may be without a display.
#pragma once

#include "core/base/result.h"
#include "ui/report/page_flow.h"

#include <QByteArray>

#include <filesystem>

class QPrinter;

namespace ringhold {

/// Vectors and embedded fonts only, text selectable. `failed` when Qt cannot write it.
Result<QByteArray> toPdf(const PageDocument& document);

/// The same into a file: whole, or not at all. unwritable when disk, folder or permission refuse.
Status writePdf(const PageDocument& document, const std::filesystem::path& path);

/// On the printer's own paper, from and to the pages that its dialog asked for. `failed` when it does not
/// take them.
Status print(const PageDocument& document, QPrinter& printer);

} // namespace ringhold
