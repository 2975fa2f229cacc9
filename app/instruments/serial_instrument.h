// Lines of text over a serial port.
#pragma once

#include "app/instruments/line_instrument.h"
#include "app/instruments/serial_settings.h"

namespace ringhold {

/// A pseudo-terminal will do for the port. The port is opened for reading only; nothing is ever sent.
class SerialInstrument final : public LineInstrument {
  public:
    SerialInstrument(SerialSettings settings, const LineFormat& format, const Clock& clock);
    ~SerialInstrument() override;
    std::string description() const override;

  private:
    void connectDevice() override;
    void disconnectDevice() override;

    SerialSettings m_settings;
    QSerialPort m_port;
};

} // namespace ringhold
