#include "tests/support/screens.h"

#include <QApplication>
#include <QWidget>

#include <cstdio>

namespace ringhold {

void keepScreens(QWidget& widget, Theme& theme, const QString& name) {
    const QString folder = qEnvironmentVariable("RINGHOLD_SCREENS");
    if (folder.isEmpty())
        return;
    theme.wear(*qApp);
    widget.show();
    if (const auto kept = keepPictures(widget, theme, folder, name, {1, 2}); !kept)
        std::fprintf(stderr, "%s\n", kept.error().text().c_str());
}

} // namespace ringhold
