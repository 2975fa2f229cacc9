// The fold-out with the growing crystal's figures.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else

#include <QFrame>

class QDoubleSpinBox;
class QLabel;

namespace ringhold {

class CrystalView;
class LiveCrystalModel;
class Preferences;
class Theme;

/// Ring by ring, the excursions, and when to dip for a ring that is to lie where the potter says. Escape
/// folds it. Model, preferences and theme outlive it.
class CrystalPanel : public QFrame {
    Q_OBJECT

  public:
    CrystalPanel(const LiveCrystalModel& model, const Preferences& preferences, const Theme& theme,
                 QWidget* parent = nullptr);
    /// Puts the keys into its field.
    void begin();

  Q_SIGNALS:
    void folded(); ///< by the keyboard

  protected:
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void refresh();
    void answer();

    const LiveCrystalModel& m_model;
    const Preferences& m_preferences;
    CrystalView* m_view;
    QLabel* m_figures;
    QDoubleSpinBox* m_radius;
    QLabel* m_answer;
};

} // namespace ringhold
