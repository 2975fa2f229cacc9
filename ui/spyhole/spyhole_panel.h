// The page on which a look through the spyhole is entered.
#pragma once

#include "core/base/result.h"

#include <QFrame>

class QLabel;
class QLayout;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace ringhold {

class ChoiceRow;
class HourRows;
class Remark;
class SpyholeModel;
class SpyholeView;
class Theme;

/// By click: an hour in a cone's row, or its tip pulled in the drawing. By keys: "10 3.5" in the typing line.
/// Enter writes, Escape leaves. Not modal: the notebook goes on around it.
class SpyholePanel : public QFrame {
    Q_OBJECT

  public:
    /// Theme and model outlive it.
    SpyholePanel(const Theme& theme, SpyholeModel& model, QWidget* parent = nullptr);

    /// Puts the keys into the typing line; to be called when the page is opened.
    void begin();

  Q_SIGNALS:
    /// Written or left: the page is done with.
    void finished();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QLayout* makeTop();
    QLayout* makeTimeRow();
    QLayout* makeFoot();
    QWidget* makeEntry();
    void connectModel();
    void showPacks();
    void showEntered();
    void showTime();
    void orderTabs();
    void chooseTime(std::optional<int> choice);
    void write();
    void leave();

    const Theme& m_theme;
    SpyholeModel& m_model;
    SpyholeView* m_view;
    HourRows* m_rows;
    ChoiceRow* m_packs = nullptr;
    QVBoxLayout* m_packPlace;
    QLabel* m_place;
    QLabel* m_time;
    ChoiceRow* m_minutes;
    QLineEdit* m_clock;
    QLineEdit* m_typed;
    Remark* m_trouble;
    QLabel* m_effect;
    Remark* m_doubts;
    QPushButton* m_write;
    QPushButton* m_leave;
};

} // namespace ringhold
