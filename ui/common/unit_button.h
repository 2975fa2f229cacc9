// Turns a page from °C to °F and back: what is kept stays as it is.
#pragma once

#include <QPushButton>

namespace ringhold {

class Preferences;

/// The preferences outlive it.
class UnitButton : public QPushButton {
    Q_OBJECT

  public:
    explicit UnitButton(Preferences& preferences, QWidget* parent = nullptr);

  Q_SIGNALS:
    /// The book does not keep the choice.
    void refused(const QString& why);

  private:
    void dress();
    void turn();
    Preferences& m_preferences;
};

} // namespace ringhold
