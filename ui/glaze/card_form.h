// What is known of one glaze, to be written in place.
#pragma once

#include "core/base/result.h" // before the card: see DEVELOPERS.md on moc and <compare>
#include "core/glaze/glaze_card.h"

#include <QWidget>

class QFormLayout;
class QLineEdit;
class QPlainTextEdit;

namespace ringhold {

class Preferences;
class Remark;

/// A field that is left with sense in it is told at once; one without says below what is wrong with it, and
/// changes nothing. Preferences outlive it.
class CardForm : public QWidget {
    Q_OBJECT

  public:
    explicit CardForm(const Preferences& preferences, QWidget* parent = nullptr);

    void show(const GlazeCard& card);
    void startWriting();

  Q_SIGNALS:
    /// `what` is the field's name.
    void edited(const ringhold::GlazeCard& card, const QString& what);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Field {
        QString label;
        QLineEdit* line = nullptr;
        Remark* trouble = nullptr;
    };
    Field addField(const QString& label, const QString& hint);
    void addText(const QString& label, const QString& hint, std::string GlazeCard::*member);
    void addTemperature(const QString& label, const QString& hint,
                        std::optional<Temperature> GlazeCard::*member);
    void addHabits();
    void addNotes();
    void tell(const GlazeCard& changed, const QString& what);

    const Preferences& m_preferences;
    QFormLayout* m_form;
    struct TextField {
        Field field;
        std::string GlazeCard::*member;
    };
    struct TemperatureField {
        Field field;
        std::optional<Temperature> GlazeCard::*member;
    };
    std::vector<TextField> m_texts;
    std::vector<TemperatureField> m_temperatures;
    Field m_habits;
    QPlainTextEdit* m_notes;
    GlazeCard m_card;
    std::optional<TemperatureUnit> m_shownIn;
};

/// "1040 to 1060 bars; 1060 to 1090 fans", in the chosen unit.
QString habitsText(const std::vector<HabitBand>& habits, const Preferences& preferences);
/// Back again; nothing when it makes no sense.
std::optional<std::vector<HabitBand>> habitsTyped(const QString& text, const Preferences& preferences);

} // namespace ringhold
