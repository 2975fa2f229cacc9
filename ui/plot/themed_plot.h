// A widget that is one plot in the theme's colours.
#pragma once

#include <QWidget>

class QCustomPlot;

namespace ringhold {

class Preferences;
class Theme;

/// The plot fills it and never has the keyboard. Preferences and theme outlive it.
class ThemedPlot : public QWidget {
    Q_OBJECT

  public:
    ThemedPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

  protected:
    /// Colours of what is drawn; called when the theme changes, after the plot itself was dressed. A class
    /// derived from this calls redress() at the end of its constructor.
    virtual void dress() = 0;
    void redress();
    QCustomPlot& plot() { return *m_plot; }
    const Theme& theme() const { return m_theme; }
    const Preferences& preferences() const { return m_preferences; }

  private:
    const Preferences& m_preferences;
    const Theme& m_theme;
    QCustomPlot* m_plot;
};

} // namespace ringhold
