// The few kinds of words that stand on every page.
#pragma once

#include "ui/theme/theme.h"

#include <QLabel>

class QFrame;
class QVBoxLayout;

namespace ringhold {

/// A heading in the theme's own font for it. The theme outlives it.
class Heading : public QLabel {
    Q_OBJECT

  public:
    Heading(const Theme& theme, TextSize size, const QString& words = {}, QWidget* parent = nullptr);
    void say(const QString& words);

  private:
    void dress();
    const Theme& m_theme;
    TextSize m_size;
};

/// Lesser words.
QLabel* softLabel(const QString& words = {});

/// One line that is there only while there is something to say.
class Remark : public QLabel {
    Q_OBJECT

  public:
    enum class Kind { plain, warning };
    explicit Remark(Kind kind, QWidget* parent = nullptr);
    /// Empty words put it away.
    void say(const QString& words);
};

/// A sheet of paper that a page lays its things on, and the column on it.
QFrame* sheet(QVBoxLayout*& column);

} // namespace ringhold
