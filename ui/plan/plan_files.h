// Plans taken out of files and written to them.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan.h"

#include <QObject>

class QWidget;

namespace ringhold {

/// Its dialogs stop nobody.
class PlanFiles : public QObject {
    Q_OBJECT

  public:
    /// Dialogs belong to that page.
    explicit PlanFiles(QWidget& page);

    /// Reads a plan file; brought() or refused() tells.
    void bringIn(const QString& file);
    /// Writes a plan without faults; written() or refused() tells.
    void writeOut(const Plan& plan, const QString& file);
    void askForPlanFile();
    void askWhereToWrite(const Plan& plan);

  Q_SIGNALS:
    void brought(const ringhold::Plan& plan);
    void written(const QString& file);
    void refused(const QString& why);

  private:
    QWidget& m_page;
};

} // namespace ringhold
