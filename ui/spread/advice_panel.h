// The fold-out with advice: targets to type, answers beside them.
#pragma once

#include <QFrame>
#include <QTimer>

#include <functional>

class QGridLayout;
class QLabel;
class QLineEdit;

namespace ringhold {

class AdviceModel;
class DoubtList;
class FiringSession;
class Preferences;
class Theme;

/// Reckons only while it is seen. Escape folds it. Session, preferences and theme outlive it.
class AdvicePanel : public QFrame {
    Q_OBJECT

  public:
    AdvicePanel(FiringSession& session, const Preferences& preferences, const Theme& theme,
                QWidget* parent = nullptr);

    AdviceModel& model() { return *m_model; }
    /// Puts the keys into its first field.
    void begin();

  Q_SIGNALS:
    void folded(); ///< by the keyboard
    void troubled(const QString& what);

  protected:
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    struct Row {
        QLineEdit* target = nullptr; ///< null: nothing to type
        QLabel* answer = nullptr;
    };
    using Setter = std::function<bool(const QString&)>;
    Row addRow(const QString& ask, const QString& spoken, const Setter& set);
    void showAnswers();
    void dress();

    const Theme& m_theme;
    AdviceModel* m_model;
    QGridLayout* m_grid;
    Row m_hold, m_by, m_more, m_drop;
    QLabel* m_fit;
    QTimer m_later; ///< readings come faster than advice is wanted
};

} // namespace ringhold
