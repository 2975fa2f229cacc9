#include "app/instruments/tcp_instrument.h"

#include <QNetworkProxy>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <sys/socket.h>

namespace ringhold {

namespace {

/// Asks the kernel to probe a silent peer: after 10 s, every 5 s, given up after three without an answer.
void keepAlive(int descriptor) {
    const auto set = [descriptor](int level, int option, int value) {
        ::setsockopt(descriptor, level, option, &value, sizeof value);
    };
    set(SOL_SOCKET, SO_KEEPALIVE, 1);
    set(IPPROTO_TCP, TCP_KEEPIDLE, 10);
    set(IPPROTO_TCP, TCP_KEEPINTVL, 5);
    set(IPPROTO_TCP, TCP_KEEPCNT, 3);
}

} // namespace

TcpInstrument::TcpInstrument(QString host, quint16 port, const LineFormat& format, const Clock& clock)
    : LineInstrument(format, clock), m_host(std::move(host)), m_port(port) {
    m_socket.setProxy(QNetworkProxy::NoProxy);
    connect(&m_socket, &QTcpSocket::connected, this, [this] {
        keepAlive(static_cast<int>(m_socket.socketDescriptor()));
        opened(StreamStart::midLine);
    });
    connect(&m_socket, &QTcpSocket::readyRead, this, [this] {
        const QByteArray bytes = m_socket.readAll();
        received({bytes.constData(), static_cast<std::size_t>(bytes.size())});
    });
    connect(&m_socket, &QTcpSocket::errorOccurred, this,
            [this] { lost(m_socket.errorString().toStdString()); });
}

TcpInstrument::~TcpInstrument() {
    close();
}

std::string TcpInstrument::description() const {
    return m_host.toStdString() + " port " + std::to_string(m_port);
}

void TcpInstrument::connectDevice() {
    m_socket.connectToHost(m_host, m_port, QIODevice::ReadOnly);
}

void TcpInstrument::disconnectDevice() {
    const QSignalBlocker quiet(m_socket);
    m_socket.abort();
}

} // namespace ringhold
