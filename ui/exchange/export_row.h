// Hands the opened firing on as a file.
#pragma once

#include "core/firing/records.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace ringhold {

class Notebook;
class Remark;

/// Two buttons, and beside them where the file went. The notebook outlives it.
class ExportRow : public QWidget {
    Q_OBJECT

  public:
    explicit ExportRow(Notebook& notebook, QWidget* parent = nullptr);

    /// Which firing; nothing when none is open.
    void show(std::optional<FiringId> firing);
    /// Writes it: JSON for a name that ends so, else CSV. An existing file is replaced whole or left as it
    /// is.
    void write(const QString& file);

  private:
    void ask(const QString& ending, const QString& filter);

    Notebook& m_notebook;
    std::optional<FiringId> m_firing;
    QPushButton* m_csv;
    QPushButton* m_json;
    QLabel* m_where;
    Remark* m_trouble;
};

} // namespace ringhold
