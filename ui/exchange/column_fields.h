// What the potter says of a CSV's columns: the time's, the control probe's, degrees, and what any other
// holds.
#pragma once

#include "core/exchange/csv_preview.h"

#include <QWidget>

class QComboBox;
class QLineEdit;

namespace ringhold {

class ColumnFields : public QWidget {
    Q_OBJECT

  public:
    /// `zone` is the one that times without any are taken to be in at first.
    explicit ColumnFields(const QString& zone, QWidget* parent = nullptr);

    /// Offers the columns of a file and forgets what was said of another.
    void offer(const CsvPreview& preview);
    /// badInput for a beginning that is no time.
    Result<CsvOptions> options() const;

  Q_SIGNALS:
    void changed();

  private:
    QComboBox* addChoice(const QString& name, int row, int column);
    QLineEdit* addLine(const QString& name, const QString& hint, int row, int column);
    void showMeaning();
    void takeMeaning();

    QComboBox* m_time;
    QComboBox* m_timeUnit;
    QComboBox* m_control;
    QComboBox* m_degrees;
    QComboBox* m_column;
    QComboBox* m_meaning;
    QLineEdit* m_began;
    QLineEdit* m_zone;
    std::map<std::string, ColumnMeaning> m_said;
};

} // namespace ringhold
