// Files on their way into the open book: chosen from the menu, or dropped on the window.
#pragma once

#include <QObject>
#include <QString>

class QWidget;

namespace ringhold {

class Notebook;
class Theme;

/// Child of the window, on which it takes dropped files. Notebook and theme outlive it.
class FileExchange : public QObject {
    Q_OBJECT

  public:
    FileExchange(Notebook& notebook, const Theme& theme, QWidget& window);

    /// Asks for a file, without stopping anything.
    void choose();
    /// Shows what would come of it.
    void open(const QString& file);

  Q_SIGNALS:
    void brought(qlonglong firing);
    void troubled(const QString& why);

  private:
    bool eventFilter(QObject* watched, QEvent* event) override;

    Notebook& m_notebook;
    const Theme& m_theme;
    QWidget& m_window;
};

} // namespace ringhold
