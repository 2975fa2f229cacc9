// The slim strip above the spread: one live firing at a glance.
#pragma once

#include "ui/spread/strip_words.h"

#include <QFrame>
#include <QTimer>

class QLabel;

namespace ringhold {

class Theme;

/// Session, preferences and theme outlive it.
class Strip : public QFrame {
    Q_OBJECT

  public:
    Strip(const FiringSession& session, const Preferences& preferences, const Theme& theme,
          QWidget* parent = nullptr);

    const StripWords& words() const { return m_words; }

    /// Where it is among the strips of several firings.
    enum class Standing {
        alone,  ///< the only one
        shown,  ///< its firing is the one shown: marked
        beside, ///< another's is: slim
    };
    void setStanding(Standing standing);
    Standing standing() const { return m_standing; }

  Q_SIGNALS:
    /// By click or key: its firing is to be shown.
    void wanted();
    /// What can be said of the firing's step, at this place of the screen.
    void menuWanted(const QPoint& at);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

  private:
    /// A caption above a value, and a softer word beside it.
    struct Field {
        QWidget* box = nullptr;
        QLabel* caption = nullptr;
        QLabel* value = nullptr;
        QLabel* beside = nullptr;
    };
    Field addField(const QString& caption, const QString& accessibleName);
    static void fill(const Field& field, const QString& value, const QString& beside);
    void refresh();
    void leaveOut();
    void dress();

    const FiringSession& m_session;
    const Preferences& m_preferences;
    const Theme& m_theme;
    StripWords m_words;
    QLabel* m_firing;
    QLabel* m_temperature;
    QLabel* m_unit;
    QLabel* m_age;
    QLabel* m_trouble;
    Standing m_standing = Standing::alone;
    Field m_climb, m_offPlan, m_step, m_cone, m_next;
    QTimer m_tick;
    QTimer m_soon; ///< readings may come faster than they can be read
};

} // namespace ringhold
