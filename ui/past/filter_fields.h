// By what past firings are looked for, besides words.
#pragma once

#include "core/book/reader.h"

#include <QWidget>

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace ringhold {

class Preferences;
class Remark;

/// Kiln, glaze, cone, grade, first and last day. Preferences outlive it.
class FilterFields : public QWidget {
    Q_OBJECT

  public:
    explicit FilterFields(const Preferences& preferences, QWidget* parent = nullptr);

    /// The chosen one stays, if it is still there.
    void showKilns(const std::vector<Kiln>& kilns);
    /// What is asked for; a day that is none is said and asks for nothing.
    FiringFilter filter() const;
    void clear();

  Q_SIGNALS:
    void changed();

  private:
    QLineEdit* addLine(QGridLayout& grid, int row, int column, const QString& hint, const QString& name);
    void tellDays();

    const Preferences& m_preferences;
    QComboBox* m_kiln;
    QLineEdit* m_glaze;
    QLineEdit* m_cone;
    QLineEdit* m_grade;
    QLineEdit* m_from;
    QLineEdit* m_to;
    Remark* m_trouble;
};

} // namespace ringhold
