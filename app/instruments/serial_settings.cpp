#include "app/instruments/serial_settings.h"

#include "app/instruments/spec_reader.h"

namespace ringhold {

SerialSettings takeSerialSettings(SpecReader& reader) {
    SerialSettings settings;
    settings.baud = static_cast<qint32>(reader.takeWhole("baud", 9600, 50, 4'000'000));
    settings.dataBits = static_cast<QSerialPort::DataBits>(reader.takeWhole("data", 8, 7, 8));
    settings.stopBits = static_cast<QSerialPort::StopBits>(reader.takeWhole("stop", 1, 1, 2));
    const auto parity = reader.takeText("parity").value_or("none");
    if (parity == "even")
        settings.parity = QSerialPort::EvenParity;
    else if (parity == "odd")
        settings.parity = QSerialPort::OddParity;
    else if (parity != "none")
        reader.blame("parity is none, even or odd, not " + parity);
    return settings;
}

} // namespace ringhold
