#include "ui/report/report_pdf.h"

#include "core/exchange/file.h"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double pointsPerInch = 72;
constexpr int resolution = 1200;

Error cannot(const char* what) {
    return {ErrorKind::failed, what};
}

/// Pages [from, to] one after another; the device's own unit becomes the point.
template <class Device>
bool paintPages(const PageDocument& document, Device& device, int from, int to) {
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    const double perPoint = device.resolution() / pointsPerInch;
    bool ok = true;
    for (int page = from; page <= to && ok; ++page) {
        if (page > from)
            ok = device.newPage();
        painter.save();
        painter.scale(perPoint, perPoint);
        document.paint(painter, page);
        painter.restore();
    }
    return painter.end() && ok;
}

} // namespace

Result<QByteArray> toPdf(const PageDocument& document) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(resolution);
        writer.setPageSize(pageSize(document.paper()));
        writer.setPageMargins(QMarginsF());
        writer.setTitle(document.title());
        writer.setCreator(QStringLiteral("Ringhold"));
        if (!paintPages(document, writer, 0, document.pageCount() - 1))
            return cannot("the PDF cannot be made");
    }
    return bytes;
}

Status writePdf(const PageDocument& document, const std::filesystem::path& path) {
    const auto bytes = toPdf(document);
    if (!bytes)
        return bytes.error();
    return writeFile(path, {bytes->constData(), static_cast<std::size_t>(bytes->size())});
}

Status print(const PageDocument& document, QPrinter& printer) {
    printer.setFullPage(true);
    const int last = document.pageCount() - 1;
    const int from = printer.fromPage() > 0 ? std::min(printer.fromPage() - 1, last) : 0;
    const int to = printer.toPage() > 0 ? std::min(printer.toPage() - 1, last) : last;
    if (!paintPages(document, printer, from, std::max(from, to)))
        return cannot("the printer does not take the pages");
    return {};
}

} // namespace ringhold
