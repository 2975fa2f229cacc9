// The service log of one kiln.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "ui/kiln/service_model.h"

#include <QWidget>

class QPushButton;

namespace ringhold {

class EntryTable;
class Remark;

/// The notebook outlives it.
class ServicePane : public QWidget {
    Q_OBJECT

  public:
    explicit ServicePane(Notebook& notebook, QWidget* parent = nullptr);
    ~ServicePane() override;

    void show(std::optional<KilnId> kiln, std::vector<Probe> probes);
    ServiceModel& model() { return *m_model; }

  Q_SIGNALS:
    void written();

  private:
    void tellButtons();

    ServiceModel* m_model;
    EntryTable* m_table;
    QPushButton* m_takeOut;
    Remark* m_trouble;
};

} // namespace ringhold
