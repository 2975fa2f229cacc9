// The whole screen for the kilns, to be read from five metres.
#pragma once

#include "ui/glance/glance_words.h"

#include <QTimer>
#include <QWidget>

#include <vector>

namespace ringhold {

class Notebook;
class Theme;

/// A window of its own; a part for each live firing. F11 or Escape leaves it, F8 acknowledges what calls
/// loudest. Its arguments outlive it.
class GlanceView : public QWidget {
    Q_OBJECT

  public:
    GlanceView(Notebook& notebook, LiveAlarms& alarms, const Theme& theme, QWidget* parent = nullptr);

    /// Of each live firing, as painted last.
    const std::vector<GlanceWords>& words() const { return m_words; }
    /// Over the whole screen, and back.
    void toggle();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;

  private:
    void refresh();
    void leave();

    Notebook& m_notebook;
    LiveAlarms& m_alarms;
    const Theme& m_theme;
    std::vector<GlanceWords> m_words;
    QTimer m_tick;
};

} // namespace ringhold
