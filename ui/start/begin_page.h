// Where a firing begins: kiln and probe, plan, packs, pieces in short, instrument, checklist.
#pragma once

#include "ui/session/notebook.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;
class QVBoxLayout;

namespace ringhold {

class BeforeLighting;
class KilnChoice;
class PackFields;
class PlanChoice;
class Theme;

/// No box that stops the rest: a page. Notebook and theme outlive it.
class BeginPage : public QWidget {
    Q_OBJECT

  public:
    BeginPage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// A specification; empty: readings by hand.
    QString instrument() const;
    void setInstrument(const QString& specification);

  Q_SIGNALS:
    /// The instruments there are should be shown.
    void instrumentWanted();

  private:
    QWidget* makeFirst();
    QWidget* makeSecond();
    void suggestTitle();
    void suggestCones();
    void addPack(const QString& place);
    void begin();
    Result<NewFiring> chosen();
    std::vector<Piece> pieces() const;
    void refuse(const QString& why);

    Notebook& m_notebook;
    const Theme& m_theme;
    KilnChoice* m_kiln = nullptr;
    QLineEdit* m_title;
    PlanChoice* m_plan;
    QVBoxLayout* m_packColumn;
    std::vector<PackFields*> m_packs;
    QPlainTextEdit* m_pieces;
    QComboBox* m_instrument;
    BeforeLighting* m_checklist;
    QLabel* m_trouble;
    QPushButton* m_begin;
};

} // namespace ringhold
