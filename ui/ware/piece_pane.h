// Under the outcome sheet: photos of the piece that the keyboard is on, its rings and sags.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/book/glaze_evidence.h"
#include "ui/ware/photo_measure.h"
#include "ui/ware/ware_model.h"

#include <QWidget>

namespace ringhold {

class FindsPane;
class Notebook;
class PhotoBar;
class PieceFinds;
class Theme;

/// Keeps the model's counts of photos, and writes what is measured on them into it. Everything goes on the
/// model's undo stack. Notebook, model and theme outlive it.
class PiecePane : public QWidget {
    Q_OBJECT

  public:
    PiecePane(Notebook& notebook, WareModel& model, const Theme& theme, QWidget* parent = nullptr);

    /// The piece on that row of the model; none on the empty one.
    void show(int row);
    /// As the book has it now; what was known of firings and glazes is read again.
    void reload();
    void countPhotos();
    PhotoBar& photos() { return *m_photos; }
    FindsPane& finds() { return *m_pane; }

  Q_SIGNALS:
    void written();
    void troubled(const QString& why);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void connectAll();
    void showMarks();
    void measured(const PhotoLength& across, std::optional<int> ring);
    const Piece* piece() const;

    Notebook& m_notebook;
    WareModel& m_model;
    GlazeEvidence m_evidence;
    PieceFinds* m_finds;
    PhotoBar* m_photos;
    FindsPane* m_pane;
    int m_row = -1;
};

} // namespace ringhold
