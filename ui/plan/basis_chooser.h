// Chooses what a plan is reckoned for: kiln, probe, cones, glaze.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/book/glaze_evidence.h"
#include "ui/plan/plan_basis.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;

namespace ringhold {

class Notebook;

/// Follows the book; what was chosen is kept in it.
class BasisChooser : public QWidget {
    Q_OBJECT

  public:
    explicit BasisChooser(Notebook& notebook, QWidget* parent = nullptr);

    const PlanBasis& basis() const { return m_basis; }

  Q_SIGNALS:
    void changed();
    /// The half width that the growth hold is to be held within for this glaze.
    void bandWanted(TemperatureDifference halfWidth);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    QLabel* addWords(const QString& objectName);
    QComboBox* addChoice(const QString& objectName, const QString& name);
    void loadBook();
    void loadKilns();
    void loadGlazes();
    void takeGlaze();
    void takeKiln();
    void take();
    void tell();
    void tellGlaze();

    Notebook& m_notebook;
    std::vector<Kiln> m_kilns;
    std::vector<OffsetChoice> m_offsets;
    PlanBasis m_basis;
    QComboBox* m_kiln;
    QComboBox* m_offset;
    QComboBox* m_cones;
    QComboBox* m_glaze;
    QLabel* m_words;
    QLabel* m_glazeWords;
    QPushButton* m_band;
    GlazeEvidence m_evidence;
    GlazeKnowledge m_known; ///< of the glaze chosen
    bool m_stale = true;    ///< the book changed while nobody looked
};

} // namespace ringhold
