#include "app/instruments/serial_instrument.h"

namespace ringhold {

SerialInstrument::SerialInstrument(SerialSettings settings, const LineFormat& format, const Clock& clock)
    : LineInstrument(format, clock), m_settings(std::move(settings)) {
    m_port.setPortName(m_settings.device);
    m_port.setBaudRate(m_settings.baud);
    m_port.setDataBits(m_settings.dataBits);
    m_port.setParity(m_settings.parity);
    m_port.setStopBits(m_settings.stopBits);
    connect(&m_port, &QSerialPort::readyRead, this, [this] {
        const QByteArray bytes = m_port.readAll();
        received({bytes.constData(), static_cast<std::size_t>(bytes.size())});
    });
    connect(&m_port, &QSerialPort::errorOccurred, this, [this](QSerialPort::SerialPortError error) {
        // What Qt says of a port that went away is of no use to a person: "inappropriate ioctl for device".
        if (error != QSerialPort::NoError && m_port.isOpen())
            lost("the port has gone: unplugged?");
    });
}

SerialInstrument::~SerialInstrument() {
    close();
}

std::string SerialInstrument::description() const {
    return m_settings.device.toStdString() + " at " + std::to_string(m_settings.baud) + " baud";
}

void SerialInstrument::connectDevice() {
    if (m_port.open(QIODevice::ReadOnly))
        opened(StreamStart::midLine);
    else
        lost(m_port.errorString().toStdString());
}

void SerialInstrument::disconnectDevice() {
    if (m_port.isOpen())
        m_port.close();
}

} // namespace ringhold
