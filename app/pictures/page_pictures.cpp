#include "app/pictures/page_pictures.h"

#include "app/pictures/stepped_clock.h"
#include "core/instrument/practice_instrument.h"
#include "ui/theme/theme.h"
#include "ui/theme/theme_pictures.h"
#include "ui/window/main_window.h"

#include <QAction>
#include <QApplication>
#include <QRegularExpression>
#include <QTabWidget>

namespace ringhold {

namespace {

/// "Shelf map" as part of a file's name.
QString inFileName(QString words) {
    static const QRegularExpression between(QStringLiteral("[^a-z0-9]+"));
    return words.remove(QLatin1Char('&')).toLower().replace(between, QStringLiteral("-"));
}

class PagePictures {
  public:
    PagePictures(MainWindow& window, Theme& theme, const PictureWish& wish)
        : m_window(window), m_theme(theme), m_wish(wish) {}

    /// A theme at a time: changing clothes takes longer than turning pages.
    Result<int> takeAll() {
        for (const auto name : {ThemeName::ember, ThemeName::paper}) {
            m_theme.show(name);
            QApplication::processEvents();
            takePages();
        }
        return m_status ? Result<int>(m_taken) : Result<int>(m_status.error());
    }

  private:
    void takePages() {
        for (const auto& spread : m_window.spreads()) {
            m_window.open(spread);
            QApplication::processEvents();
            takePage(inFileName(spread));
        }
        takeByKey("Alt+L", QStringLiteral("spyhole"));
        takeByKey("Ctrl+I", QStringLiteral("instruments"));
    }

    void take(const QString& name) {
        if (!m_status)
            return;
        m_status = keepPicture(m_window, m_theme, m_wish.folder, name, m_wish.pixelRatios);
        m_taken += static_cast<int>(m_wish.pixelRatios.size());
    }

    /// With each tab that is in sight in turn.
    void takePage(const QString& name) {
        QTabWidget* tabs = nullptr;
        for (auto* candidate : m_window.findChildren<QTabWidget*>())
            if (candidate->isVisible())
                tabs = candidate;
        if (!tabs)
            return take(name);
        for (int i = 0; i < tabs->count(); ++i) {
            tabs->setCurrentIndex(i);
            QApplication::processEvents();
            take(name + QLatin1Char('-') + inFileName(tabs->tabText(i)));
        }
        tabs->setCurrentIndex(0);
    }

    void takeByKey(const char* key, const QString& name) {
        m_window.open(m_window.spreads().front());
        for (auto* action : m_window.findChildren<QAction*>())
            if (action->shortcut() == QKeySequence(QLatin1String(key))) {
                action->trigger();
                QApplication::processEvents();
                take(name);
            }
    }

    MainWindow& m_window;
    Theme& m_theme;
    const PictureWish& m_wish;
    Status m_status;
    int m_taken = 0;
};

} // namespace

void liveThrough(PracticeInstrument& kiln, SteppedClock& clock, Duration time) {
    const Instant until = clock.now() + time;
    while (clock.now() < until) {
        clock.pass(std::chrono::minutes(1));
        kiln.advance(clock.now());
        QApplication::processEvents();
    }
}

Result<int> picturePages(MainWindow& window, Theme& theme, const PictureWish& wish) {
    return PagePictures(window, theme, wish).takeAll();
}

} // namespace ringhold
