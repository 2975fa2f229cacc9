// How a serial line is set.
#pragma once

#include <QSerialPort>

namespace ringhold {

class SpecReader;

struct SerialSettings {
    QString device;
    qint32 baud = 9600;
    QSerialPort::DataBits dataBits = QSerialPort::Data8;
    QSerialPort::Parity parity = QSerialPort::NoParity;
    QSerialPort::StopBits stopBits = QSerialPort::OneStop;
};

/// Takes baud, data, stop and parity; what is wrong is the reader's fault(). The device is left to the
/// caller.
SerialSettings takeSerialSettings(SpecReader& reader);

} // namespace ringhold
