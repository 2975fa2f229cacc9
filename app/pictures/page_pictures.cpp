#include "app/pictures/page_pictures.h"

#include "app/pictures/stepped_clock.h"
#include "core/instrument/practice_instrument.h"
#include "ui/alarm/sound_trial.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"
#include "ui/theme/theme_pictures.h"
#include "ui/window/main_window.h"

#include <QAction>
#include <QApplication>
#include <QPushButton>
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
        takeReport();
        return m_status ? Result<int>(m_taken) : Result<int>(m_status.error());
    }

  private:
    void takePages() {
        trigger("Alt+F"); // from wherever the firing's spread was left
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
        if (trigger(key))
            take(name);
    }

    /// In both themes at once: the past page goes on showing the report.
    void takeReport() {
        if (!m_status || !trigger("Ctrl+R"))
            return;
        m_status =
            keepPictures(m_window, m_theme, m_wish.folder, QStringLiteral("report"), m_wish.pixelRatios);
        m_taken += 2 * static_cast<int>(m_wish.pixelRatios.size());
    }

    bool trigger(const char* key) {
        for (auto* action : m_window.findChildren<QAction*>())
            if (action->shortcut() == QKeySequence(QLatin1String(key))) {
                action->trigger();
                QApplication::processEvents();
                return true;
            }
        return false;
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

void answerAll(Notebook& notebook, MainWindow& window) {
    for (const auto& session : notebook.sessions())
        session->acknowledgeAll(QStringLiteral("practice"));
    for (auto* trial : window.findChildren<SoundTrial*>())
        trial->findChildren<QPushButton*>().front()->click(); // it was heard
}

Result<int> picturePages(MainWindow& window, Theme& theme, const PictureWish& wish) {
    return PagePictures(window, theme, wish).takeAll();
}

} // namespace ringhold
