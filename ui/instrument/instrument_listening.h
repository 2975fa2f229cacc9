// Listens to an instrument on trial, apart from any firing.
#pragma once

#include "core/instrument/instrument.h"

#include <QObject>
#include <QString>
#include <QTimer>

#include <memory>

namespace ringhold {

class Clock;

/// Lives in the window's thread. The clock outlives it.
class InstrumentListening : public QObject, private InstrumentListener {
    Q_OBJECT

  public:
    explicit InstrumentListening(const Clock& clock, QObject* parent = nullptr);
    ~InstrumentListening() override;

    Status start(std::unique_ptr<Instrument> instrument);
    /// Lets go of the instrument, so that a firing may have it.
    void stop();
    bool listens() const { return m_instrument != nullptr; }

  Q_SIGNALS:
    void line(const QString& text, bool understood);
    void sample(const ringhold::Sample& sample);
    void linkChanged(ringhold::LinkState state, const QString& detail);

  private:
    void advance();
    void onSample(const Sample& heard) override;
    void onLine(const std::string& text, bool understood) override;
    void onLink(LinkState state, const std::string& detail) override;

    const Clock& m_clock;
    std::unique_ptr<Instrument> m_instrument;
    QTimer m_timer;
};

} // namespace ringhold
