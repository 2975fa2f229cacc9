// A row of buttons of which at most one is chosen.
#pragma once

#include <QWidget>

#include <optional>
#include <vector>

class QToolButton;

namespace ringhold {

/// One stop of the Tab key: the arrow keys, Home and End go along it and choose, Space chooses, and clears
/// where nothing may be chosen. What is chosen is told by a heavier frame and bold letters as well as by
/// colour.
class ChoiceRow : public QWidget {
    Q_OBJECT

  public:
    struct Choice {
        QString text;
        QString spoken;    ///< for a screen reader; the text when empty
        bool slim = false; ///< lesser: a half between two whole ones
    };

    ChoiceRow(const QString& accessibleName, const std::vector<Choice>& choices, QWidget* parent = nullptr);

    /// Whether choosing the chosen one again clears it.
    void setMayBeNone(bool may) { m_mayBeNone = may; }
    std::optional<int> current() const { return m_current; }
    /// Tells nobody.
    void setCurrent(std::optional<int> index);
    QToolButton* button(int index) const { return m_buttons[static_cast<std::size_t>(index)]; }
    int count() const { return static_cast<int>(m_buttons.size()); }

  Q_SIGNALS:
    /// By the potter; nothing when cleared.
    void chosen(std::optional<int> index);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void showEvent(QShowEvent* event) override;

  private:
    void choose(std::optional<int> index);
    void clicked(int index);
    bool goBy(int key, int from);
    void makeRoomForBold();

    std::vector<QToolButton*> m_buttons;
    std::optional<int> m_current;
    bool m_mayBeNone = false;
};

} // namespace ringhold
