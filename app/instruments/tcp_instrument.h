// Lines of text over a TCP connection.
#pragma once

#include "app/instruments/line_instrument.h"

#include <QTcpSocket>

namespace ringhold {

/// A client: connects to host and port, never sends. A peer that vanishes without a word is noticed within
/// half a minute.
class TcpInstrument final : public LineInstrument {
  public:
    TcpInstrument(QString host, quint16 port, const LineFormat& format, const Clock& clock);
    ~TcpInstrument() override;
    std::string description() const override;

  private:
    void connectDevice() override;
    void disconnectDevice() override;

    QString m_host;
    quint16 m_port;
    QTcpSocket m_socket;
};

} // namespace ringhold
