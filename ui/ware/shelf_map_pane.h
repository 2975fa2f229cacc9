// The shelf map with what belongs to it: a line for a new shelf, and what the keyboard is on in words.
#pragma once

#include "ui/ware/shelf_map_model.h"

#include <QWidget>

class QLabel;
class QLineEdit;

namespace ringhold {

class Notebook;
class ShelfMapView;
class Theme;
class WareModel;

/// Moves pieces through the ware's model and packs in the book; both can be undone on the model's stack. All
/// given outlive it.
class ShelfMapPane : public QWidget {
    Q_OBJECT

  public:
    ShelfMapPane(Notebook& notebook, WareModel& ware, const Theme& theme, QWidget* parent = nullptr);

    /// The packs of the firing whose pieces the model shows.
    void show(std::vector<Pack> packs);
    ShelfMapView& view() { return *m_view; }
    const ShelfMapModel& map() const { return *m_map; }

  Q_SIGNALS:
    void troubled(const QString& why);
    void packsWritten();

  private:
    friend class PackMove;
    void refresh();
    void moved(const ShelfItem& item, const QString& shelf, MapSpot spot);
    bool writePack(const Pack& pack);
    void addShelf();

    Notebook& m_notebook;
    WareModel& m_ware;
    ShelfMapModel* m_map;
    ShelfMapView* m_view;
    QLabel* m_words;
    QLineEdit* m_newShelf;
    std::vector<Pack> m_packs;
    QStringList m_extraShelves;
};

} // namespace ringhold
