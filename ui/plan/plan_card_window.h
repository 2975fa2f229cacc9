// The plan card as it will be printed, with what can be chosen about it.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_card_words.h"

#include <QDialog>
#include <QPageSize>

#include <memory>

class QComboBox;
class QLabel;
class QPrinter;
class QPrintPreviewWidget;

namespace ringhold {

class Preferences;

/// Stops nobody: the window beneath goes on working.
class PlanCardWindow : public QDialog {
    Q_OBJECT

  public:
    /// The plan must pass check(). The preferences outlive it.
    PlanCardWindow(const Plan& plan, const PlanBasis& basis, Instant written, const Preferences& preferences,
                   QWidget* parent = nullptr);
    ~PlanCardWindow() override;

    PlanCardWords words() const;
    /// Says in the window what became of it.
    void writePdf(const QString& file);

  private:
    QWidget* makeChoices();
    QComboBox* addChoice(const QString& objectName, const QString& name, const QStringList& texts);
    CardCorrection correction() const;
    QPageSize pageSize() const;
    void refresh();
    void askForFile();
    void askForPrinter();
    void say(const QString& words, bool wrong);

    Plan m_plan;
    PlanBasis m_basis;
    Instant m_written;
    const Preferences& m_preferences;
    std::unique_ptr<QPrinter> m_printer;
    QComboBox* m_correction = nullptr;
    QComboBox* m_size = nullptr;
    QLabel* m_said = nullptr;
    QPrintPreviewWidget* m_preview = nullptr;
};

} // namespace ringhold
