// Which plan a firing follows: one of the potter's own, an example, one from a file, or none.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan.h"

#include <QComboBox>

#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

/// Shows the plans as the book has them whenever it comes in sight; what was chosen stays chosen. The
/// notebook outlives it.
class PlanChoice : public QComboBox {
    Q_OBJECT

  public:
    explicit PlanChoice(Notebook& notebook, QWidget* parent = nullptr);

    /// Nothing: no plan.
    std::optional<Plan> plan() const;
    /// Offers that file's plan and chooses it.
    Status takeFile(const QString& file);

  Q_SIGNALS:
    void chosen(); ///< by the potter
    void refused(const QString& why);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void load();
    void offer(const Plan& plan, const QString& kind);
    void chooseFile();

    Notebook& m_notebook;
    std::vector<Plan> m_plans; ///< one an entry after the first, but for the last
    std::vector<Plan> m_fromFiles;
    int m_before = 0; ///< what was chosen before a file was asked for
};

} // namespace ringhold
