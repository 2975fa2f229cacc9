// One message on the page, in the place of a box that would stop the potter.
#pragma once

#include <QFrame>

#include <functional>

class QLabel;
class QPushButton;

namespace ringhold {

/// Hidden while there is nothing to say; stays until it is closed or another comes.
class PlanMessage : public QFrame {
    Q_OBJECT

  public:
    enum class Tone { plain, warning };

    explicit PlanMessage(QWidget* parent = nullptr);

    /// With a button that does something about it, if it has a text.
    void say(Tone tone, const QString& words, const QString& button = {}, std::function<void()> act = {});
    void dismiss();
    /// What is said just now; empty while hidden.
    QString words() const;

  private:
    QLabel* m_words;
    QPushButton* m_act;
    std::function<void()> m_what;
};

} // namespace ringhold
