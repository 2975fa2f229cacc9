// The glazes page: the cards on the left; on the right one of them, its recipe, and what firings made of it.
#pragma once

#include "core/base/result.h" // before the card: see DEVELOPERS.md on moc and <compare>
#include "core/book/glaze_evidence.h"
#include "core/glaze/glaze_card.h"
#include "ui/glaze/glaze_results.h"

#include <QWidget>

#include <optional>

class QLabel;
class QListView;
class QPushButton;
class QTabWidget;

namespace ringhold {

class CardForm;
class CardsModel;
class FittedTable;
class FreshWhenSeen;
class GlazeUseModel;
class GrowthPane;
class LessonsPane;
class Heading;
class Notebook;
class RecipePane;
class Remark;
class Theme;

/// Notebook and theme outlive it.
class GlazePage : public QWidget {
    Q_OBJECT

  public:
    GlazePage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);
    ~GlazePage() override;

    /// The card of that name, if there is one.
    void open(const QString& glaze);
    CardsModel& cards() { return *m_cards; }

  Q_SIGNALS:
    void firingWanted(qlonglong firing);

  private:
    QWidget* makeList(const Theme& theme);
    QWidget* makeCard(const Theme& theme);
    void connectAll();
    void refresh();
    void showCurrent();
    void learn();
    void showGrowth(const GlazeCard& card);
    void addNew();
    void takeAway();
    void addNamedInFirings();
    std::optional<GlazeCardId> current() const;
    void goTo(std::optional<GlazeCardId> card);

    Notebook& m_notebook;
    const Theme& m_theme;
    CardsModel* m_cards;
    QListView* m_list;
    QPushButton* m_new;
    QPushButton* m_fromFirings;
    QPushButton* m_takeAway;
    Heading* m_title;
    QTabWidget* m_tabs;
    CardForm* m_form;
    RecipePane* m_recipe;
    GlazeUseModel* m_use;
    FittedTable* m_useTable;
    QLabel* m_useWords;
    LessonsPane* m_lessons;
    GrowthPane* m_growth;
    Remark* m_trouble;
    FreshWhenSeen* m_fresh;
    GlazeResults m_results;
    GlazeEvidence m_evidence;
    std::optional<GlazeCardId> m_before; ///< that was shown while the list is set anew
};

} // namespace ringhold
