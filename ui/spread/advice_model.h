// What the potter asks at the kiln, and the answers: hold at, down by, minutes more, drop now. No widgets.
#pragma once

#include "core/base/result.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

#include <QObject>
#include <QString>

#include <optional>
#include <string>

namespace ringhold {

class FiringAdvice;
class FiringSession;
class Preferences;

/// Targets are typed as potters write them; until they are, they are what suits the firing. Session and
/// preferences outlive it.
class AdviceModel : public QObject {
    Q_OBJECT

  public:
    AdviceModel(const FiringSession& session, const Preferences& preferences, QObject* parent = nullptr);

    /// As it stands in its field: "1262", "21:30", "15 min".
    QString holdText() const;
    QString byText() const;
    QString moreText() const;
    /// False when it is not understood: then the target stays as it was. Empty text takes what suits the
    /// firing.
    bool setHold(const QString& text);
    bool setBy(const QString& text);
    bool setMore(const QString& text);

    const QString& holdAnswer() const { return m_holdAnswer; }
    const QString& byAnswer() const { return m_byAnswer; }
    const QString& moreAnswer() const { return m_moreAnswer; }
    const QString& dropAnswer() const { return m_dropAnswer; }
    /// "The model is within 2 °C of the chart for cones 8, 9 and 10, at 15 to 150 °C/h."
    QString modelFit() const;

    /// Reckons all answers anew; tens of milliseconds.
    void refresh();

  Q_SIGNALS:
    void changed();

  private:
    Temperature hold() const;
    std::optional<Instant> by() const;
    std::string guardCone(const std::string& firingCone) const;

    const FiringSession& m_session;
    const Preferences& m_preferences;
    std::optional<Temperature> m_hold;
    std::optional<Instant> m_by;
    Duration m_more = std::chrono::minutes(15);
    QString m_holdAnswer, m_byAnswer, m_moreAnswer, m_dropAnswer;
};

} // namespace ringhold
