// One cone pack in the making: where it stands, which cones, of which series.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace ringhold {

class PackFields : public QWidget {
    Q_OBJECT

  public:
    explicit PackFields(const QString& place, QWidget* parent = nullptr);

    /// badInput for a cone that its series does not have. A pack without cones is none.
    Result<std::optional<Pack>> pack() const;
    /// Guide, firing and guard cone of a plan that waits for one, unless the potter wrote cones.
    void suggestFor(const Plan& plan);

  private:
    QLineEdit* m_place;
    QLineEdit* m_cones;
    QComboBox* m_type;
    QCheckBox* m_left;
};

} // namespace ringhold
