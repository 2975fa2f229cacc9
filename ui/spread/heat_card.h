// The card that says how the cones stand, or how the hold goes, in words.
#pragma once

#include <QFrame>
#include <QTimer>

class QLabel;
class QToolButton;

namespace ringhold {

class FiringSession;
class Preferences;
class Theme;

/// Session, preferences and theme outlive it.
class HeatCard : public QFrame {
    Q_OBJECT

  public:
    HeatCard(const FiringSession& session, const Preferences& preferences, const Theme& theme,
             QWidget* parent = nullptr);
    void refresh();
    void foldAdvice();

  Q_SIGNALS:
    /// To be unfolded, or folded.
    void adviceWanted(bool unfolded);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    /// Reckons the words anew if anybody sees them.
    void follow();
    void dress();

    const FiringSession& m_session;
    const Preferences& m_preferences;
    const Theme& m_theme;
    QLabel* m_title;
    QToolButton* m_advice;
    QLabel* m_main;
    QLabel* m_lines;
    QLabel* m_warnings;
    QTimer m_tick;
};

} // namespace ringhold
