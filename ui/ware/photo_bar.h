// The photos of the piece that the keyboard is on, in a row.
#pragma once

#include "ui/ware/photo_model.h"

#include <QWidget>

#include <functional>

class QLabel;
class QListView;
class QPushButton;
class QUndoStack;

namespace ringhold {

class MeasureWindow;
class Theme;

/// Files are added by button or dropped on it. Notebook, theme and stack outlive it.
class PhotoBar : public QWidget {
    Q_OBJECT

  public:
    PhotoBar(Notebook& notebook, QUndoStack& undo, const Theme& theme, QWidget* parent = nullptr);

    void show(std::optional<PieceId> piece, const QString& name);
    PhotoModel& model() { return *m_model; }
    QListView& list() { return *m_list; }
    void addFiles(const QStringList& files);
    /// How files are asked for; a dialog unless a test says otherwise.
    void setFileChooser(std::function<QStringList()> chooser) { m_chooseFiles = std::move(chooser); }
    /// Opens a window; null without a photo.
    MeasureWindow* measure();

  Q_SIGNALS:
    void written();
    void troubled(const QString& why);
    /// Across a crystal, or across that ring, counted from the innermost, 0.
    void measured(const PhotoLength& across, std::optional<int> ring);

  protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

  private:
    void takeAway();
    void tell();

    Notebook& m_notebook;
    QUndoStack& m_undo;
    const Theme& m_theme;
    PhotoModel* m_model;
    QListView* m_list;
    QLabel* m_words;
    QPushButton* m_add;
    QPushButton* m_measure;
    QPushButton* m_takeAway;
    QString m_name;
    std::function<QStringList()> m_chooseFiles;
};

} // namespace ringhold
