// A controller or a meter that is asked for its registers by Modbus, over TCP or a serial line.
#pragma once

#include "app/instruments/linked_instrument.h"
#include "app/instruments/serial_settings.h"
#include "core/units/temperature.h"

#include <QModbusDataUnit>

#include <memory>
#include <variant>
#include <vector>

class QModbusClient;
class QModbusReply;

namespace ringhold {

/// Where the unit is.
struct ModbusPeer {
    QString host;
    quint16 port = 502;
};

/// What is asked of it.
struct ModbusQuestion {
    int unit = 1; ///< 1 to 247, of the peer's units
    QModbusDataUnit::RegisterType table = QModbusDataUnit::HoldingRegisters; ///< or InputRegisters
    std::vector<int> registers{0}; ///< counted from 0; one probe each
    double scale = 1;              ///< degrees in one count
    bool isSigned = true;          ///< counts from -32768 to 32767
    TemperatureUnit degrees = TemperatureUnit::celsius;
    std::chrono::milliseconds every = std::chrono::seconds(5);
};

/// A value out of a register; nothing when it is colder than -50 °C or hotter than 1800 °C, as many units say
/// that their probe is open.
std::optional<Temperature> temperatureIn(quint16 counts, const ModbusQuestion& question);

/// Asks again and again, and only reads: never writes a register. No answer, or an answer that refuses, is a
/// lost link. Each register is told as a raw line, "holding register 0: 10432".
class ModbusInstrument final : public LinkedInstrument {
  public:
    using Wire = std::variant<ModbusPeer, SerialSettings>;
    ModbusInstrument(Wire wire, ModbusQuestion question, const Clock& clock);
    ~ModbusInstrument() override;
    std::string description() const override;
    /// How long an answer is waited for, each of three times; 1 s unless set.
    void setPatience(std::chrono::milliseconds patience) { m_patience = patience; }

  private:
    void connectDevice() override;
    void disconnectDevice() override;
    void ask();
    void askFor(std::size_t index);
    void hear(QModbusReply& reply, std::size_t index);
    void tellRegister(int number, quint16 counts);

    Wire m_wire;
    ModbusQuestion m_question;
    std::chrono::milliseconds m_patience{1000};
    std::unique_ptr<QModbusClient> m_client;
    QTimer m_next;
    bool m_asking = false; ///< a round of questions is under way
};

} // namespace ringhold
