// The card that says how the cones stand, or how the hold goes, in words.
#pragma once

#include <QFrame>
#include <QString>
#include <QStringList>

class QLabel;

namespace ringhold {

class FiringSession;
class Preferences;
class Theme;

struct CardWords {
    QString title; ///< "Heat work", "Growth hold"
    QString main;  ///< "9 nearly down, 10 just leaning"
    QStringList lines;
};

/// Hold words while the plan holds or draws rings, else heat-work words.
CardWords cardWords(const FiringSession& session, const Preferences& preferences);

/// Session, preferences and theme outlive it.
class HeatCard : public QFrame {
    Q_OBJECT

  public:
    HeatCard(const FiringSession& session, const Preferences& preferences, const Theme& theme,
             QWidget* parent = nullptr);
    void refresh();

  private:
    void dress();

    const FiringSession& m_session;
    const Preferences& m_preferences;
    const Theme& m_theme;
    QLabel* m_title;
    QLabel* m_main;
    QLabel* m_lines;
};

} // namespace ringhold
