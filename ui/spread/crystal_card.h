// The card with the crystal as it grows.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else

#include <QFrame>

class QLabel;
class QToolButton;

namespace ringhold {

class CrystalView;
class LiveCrystalModel;
class Theme;

/// Seen while there is a crystal. Model and theme outlive it.
class CrystalCard : public QFrame {
    Q_OBJECT

  public:
    CrystalCard(const LiveCrystalModel& model, const Theme& theme, QWidget* parent = nullptr);
    /// As if the button had been let go.
    void foldGrowth();

  Q_SIGNALS:
    /// The figures are to be unfolded, or folded.
    void growthWanted(bool unfolded);

  private:
    void refresh();

    const LiveCrystalModel& m_model;
    const Theme& m_theme;
    CrystalView* m_view;
    QToolButton* m_growth;
    QLabel* m_size;
};

} // namespace ringhold
