// Where a firing begins: kiln and probe, plan, packs, pieces in short, instrument, checklist.
#pragma once

#include "ui/session/notebook.h"

#include <QWidget>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;
class QVBoxLayout;

namespace ringhold {

class PackFields;
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
    void fillKilns();
    void fillProbes();
    void fillPlans();
    void choosePlanFile();
    void addPack(const QString& place);
    void begin();
    Result<KilnId> chosenKiln();
    Result<std::optional<ProbeId>> chosenProbe(KilnId kiln);
    Result<NewFiring> chosen();
    void refuse(const QString& why);

    Notebook& m_notebook;
    const Theme& m_theme;
    QComboBox* m_kiln;
    QComboBox* m_probe;
    QComboBox* m_probeType;
    QLineEdit* m_title;
    QComboBox* m_plan;
    QVBoxLayout* m_packColumn;
    std::vector<PackFields*> m_packs;
    QPlainTextEdit* m_pieces;
    QComboBox* m_instrument;
    QLabel* m_trouble;
    QPushButton* m_begin;
    std::vector<Plan> m_plans;
};

} // namespace ringhold
