#include "ui/theme/theme_pictures.h"

#include "ui/theme/theme.h"

#include <QApplication>
#include <QDir>
#include <QWidget>

namespace ringhold {

namespace {
constexpr int layoutPasses = 4; ///< a new font changes a label, that its row, that the page
}

QImage pictureOf(QWidget& widget, double pixelRatio) {
    QImage image(widget.size() * pixelRatio, QImage::Format_RGB32);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(widget.palette().color(QPalette::Window));
    widget.render(&image);
    return image;
}

Status keepPicture(QWidget& widget, const Theme& theme, const QString& folder, const QString& name,
                   const std::vector<int>& pixelRatios) {
    QDir().mkpath(folder);
    for (int pass = 0; pass < layoutPasses; ++pass)
        QApplication::processEvents();
    const QString dressed =
        name + (theme.name() == ThemeName::paper ? QStringLiteral("-paper") : QStringLiteral("-ember"));
    for (const int ratio : pixelRatios) {
        const QString file = QDir(folder).filePath(
            dressed + (ratio == 1 ? QStringLiteral(".png") : QStringLiteral("-%1x.png").arg(ratio)));
        if (!pictureOf(widget, ratio).save(file))
            return Error{ErrorKind::unwritable, "the picture cannot be written", file.toStdString()};
    }
    return {};
}

Status keepPictures(QWidget& widget, Theme& theme, const QString& folder, const QString& name,
                    const std::vector<int>& pixelRatios) {
    for (const auto themeName : {ThemeName::ember, ThemeName::paper}) {
        theme.show(themeName);
        if (const auto kept = keepPicture(widget, theme, folder, name, pixelRatios); !kept)
            return kept;
    }
    return {};
}

} // namespace ringhold
