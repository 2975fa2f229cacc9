// The one line to write on: notes, readings, looks, settings, and when they were.
#pragma once

#include "core/firing/written_line.h"

#include <QFrame>

#include <functional>

class QLabel;
class QLineEdit;

namespace ringhold {

class Theme;

/// Says while it is written what it will be. Enter writes it; Escape goes back to an open line. The theme
/// outlives it.
class WritingLine : public QFrame {
    Q_OBJECT

  public:
    using ContextMaker = std::function<WritingContext()>;
    using Describe = std::function<QString(const WrittenLine&)>;

    /// `context` is asked each time a line is read; `describe` says in a few words what a line would be.
    WritingLine(ContextMaker context, Describe describe, const Theme& theme, QWidget* parent = nullptr);

    /// Takes the keyboard, for a line of that kind.
    void begin(LineKind kind);
    /// The same, for a line that begins so.
    void begin(LineKind kind, const QString& text);
    /// The line was kept: it is cleared.
    void kept();
    /// It was not: it stays, and this is said.
    void refuse(const QString& why);
    /// Says that something was written elsewhere, until the next key; nothing is cleared.
    void tell(const QString& what);

  Q_SIGNALS:
    void written(const ringhold::WrittenLine& line);
    void undoWanted();
    void redoWanted();
    /// The hint for the spyhole was clicked.
    void spyholeWanted();
    /// That for the cone that is down.
    void coneDownWanted();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void understand();
    void write();
    QWidget* makeHints();
    void dress();

    ContextMaker m_context;
    Describe m_describe;
    const Theme& m_theme;
    LineKind m_kind = LineKind::open;
    QLabel* m_kindWords;
    QLineEdit* m_edit;
    QLabel* m_meaning;
    QWidget* m_hints; ///< while nothing is written
    bool m_bad = false;
};

} // namespace ringhold
