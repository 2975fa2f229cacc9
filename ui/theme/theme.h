// What the notebook looks like: the colours and fonts of the theme that is on, and how the application wears
// it.
#pragma once

#include "ui/theme/palette.h"

#include <QFont>
#include <QObject>
#include <QPalette>
#include <QPointer>

class QApplication;

namespace ringhold {

enum class ThemeName { paper, ember };

/// Five sizes are all there are. At scale 1: 9.5, 11, 15, 20 and 40 points.
enum class TextSize { small, body, large, title, display };

/// One for all windows; handed to whoever paints by itself, who repaints at changed(). Lives in the window's
/// thread.
class Theme : public QObject {
    Q_OBJECT

  public:
    static constexpr double smallestScale = 0.8;
    static constexpr double largestScale = 2.0;

    explicit Theme(QObject* parent = nullptr) : Theme(builtInPalettes(), parent) {}
    explicit Theme(const Palettes& palettes, QObject* parent = nullptr);

    /// Dresses the application, now and before every changed(): style, font, palette, style sheet.
    void wear(QApplication& application);

    ThemeName name() const { return m_name; }
    void show(ThemeName name);
    double textScale() const { return m_scale; }
    /// Taken to the nearest scale that is allowed.
    void setTextScale(double scale);

    const Palette& palette() const {
        return m_name == ThemeName::ember ? m_palettes.ember : m_palettes.paper;
    }

    QFont text(TextSize size, QFont::Weight weight = QFont::Normal) const;
    /// The font for a heading of these words: one with figures is set in the text's font, whose figures are
    /// tabular.
    QFont heading(TextSize size, const QString& words) const;

    /// For widgets that are not painted by us.
    QPalette widgetPalette() const;
    QString styleSheet() const;

  Q_SIGNALS:
    void changed();

  private:
    double points(TextSize size) const;
    void change();

    Palettes m_palettes;
    ThemeName m_name = ThemeName::paper;
    double m_scale = 1;
    QPointer<QApplication> m_application;
};

/// Whether the words of this palette are lighter than their ground: all that Qt 6.4 tells of a dark desktop.
bool isDark(const QPalette& palette);

} // namespace ringhold
