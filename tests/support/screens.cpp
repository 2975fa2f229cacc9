#include "tests/support/screens.h"

#include <QApplication>
#include <QDir>
#include <QImage>
#include <QWidget>

namespace ringhold {

QImage pictureOf(QWidget& widget, double pixelRatio) {
    QImage image(widget.size() * pixelRatio, QImage::Format_RGB32);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(widget.palette().color(QPalette::Window));
    widget.render(&image);
    return image;
}

void keepScreens(QWidget& widget, Theme& theme, const QString& name) {
    const QString folder = qEnvironmentVariable("RINGHOLD_SCREENS");
    if (folder.isEmpty())
        return;
    QDir().mkpath(folder);
    theme.wear(*qApp);
    widget.show();
    for (const auto themeName : {ThemeName::ember, ThemeName::paper}) {
        theme.show(themeName);
        QApplication::processEvents();
        const QString base =
            QStringLiteral("%1/%2-%3")
                .arg(folder, name,
                     themeName == ThemeName::paper ? QStringLiteral("paper") : QStringLiteral("ember"));
        pictureOf(widget, 1).save(base + QStringLiteral(".png"));
        pictureOf(widget, 2).save(base + QStringLiteral("-2x.png"));
    }
}

} // namespace ringhold
