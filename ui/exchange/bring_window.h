// A window in which a file is looked at before it is brought into the book.
#pragma once

#include "ui/exchange/file_draft.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace ringhold {

class ColumnFields;
class Notebook;
class Preferences;
class PreviewModel;
class Remark;
class Theme;

/// Stops nobody: it is not modal, and nothing is written until the potter says so. Notebook and theme outlive
/// it.
class BringWindow : public QDialog {
    Q_OBJECT

  public:
    BringWindow(Notebook& notebook, const Theme& theme, FileDraft draft, QWidget* parent = nullptr);

    const FileDraft& draft() const { return m_draft; }

  Q_SIGNALS:
    /// It is in the book under that number.
    void brought(qlonglong firing);

  private:
    QLayout* makeHead();
    QLayout* makeFoot();
    void reckon();
    void tell();
    void keep();

    Notebook& m_notebook;
    FileDraft m_draft;
    PreviewModel* m_model;
    QTableView* m_table;
    ColumnFields* m_columns;
    QComboBox* m_kiln;
    QLineEdit* m_title;
    QLabel* m_what;
    Remark* m_left;
    Remark* m_trouble;
    QPushButton* m_keep;
};

/// "7 200 readings on 3 channels, Sunday 1 March 2026 06:30 to 23:41 · 4 looks · 9 pieces · 2 photos".
QString broughtWords(const BroughtFile& brought, const Preferences& preferences);

} // namespace ringhold
