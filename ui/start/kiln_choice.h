// Which kiln is fired, and by which probe: known ones, or new ones by their names.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/firing/records.h"

#include <QObject>

#include <optional>

class QComboBox;
class QFormLayout;

namespace ringhold {

class Notebook;

/// Two rows of a form. Follows the book. The notebook outlives it.
class KilnChoice : public QObject {
    Q_OBJECT

  public:
    KilnChoice(Notebook& notebook, QFormLayout& form, QObject* parent = nullptr);

    /// What was chosen; a name that the book does not know is written to it. badInput without a name.
    Result<KilnId> kiln();
    /// Likewise, of that kiln. Nothing without a name.
    Result<std::optional<ProbeId>> probe(KilnId kiln);

  private:
    void fillTypes();
    void fillKilns();
    void fillProbes();
    void showType();
    std::vector<Probe> probesInUse() const;

    Notebook& m_notebook;
    QComboBox* m_kiln;
    QComboBox* m_probe;
    QComboBox* m_type; ///< of a new probe
};

} // namespace ringhold
