// Chooses what a plan is reckoned for: kiln, probe, cones.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_basis.h"

#include <QWidget>

class QComboBox;
class QLabel;

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

  private:
    QComboBox* addChoice(const QString& objectName, const QString& name);
    void loadKilns();
    void takeKiln();
    void take();
    void tell();

    Notebook& m_notebook;
    std::vector<Kiln> m_kilns;
    std::vector<OffsetChoice> m_offsets;
    PlanBasis m_basis;
    QComboBox* m_kiln;
    QComboBox* m_offset;
    QComboBox* m_cones;
    QLabel* m_words;
};

} // namespace ringhold
