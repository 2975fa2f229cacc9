#include "app/instruments/follow_instrument.h"

#include <sys/stat.h>

namespace ringhold {

namespace {

constexpr std::chrono::milliseconds pollEvery{500};

/// Whether the open file is no longer the one that its name leads to.
bool replaced(const QFile& file) {
    struct stat open {};
    struct stat named {};
    if (::fstat(file.handle(), &open) != 0 || ::stat(file.fileName().toLocal8Bit().constData(), &named) != 0)
        return true;
    return open.st_ino != named.st_ino || open.st_dev != named.st_dev;
}

} // namespace

FollowInstrument::FollowInstrument(QString path, const LineFormat& format, const Clock& clock)
    : LineInstrument(format, clock), m_path(std::move(path)), m_file(m_path) {
    connect(&m_watcher, &QFileSystemWatcher::fileChanged, this, [this] { look(); });
    m_poll.setInterval(pollEvery);
    connect(&m_poll, &QTimer::timeout, this, [this] { look(); });
}

FollowInstrument::~FollowInstrument() {
    close();
}

std::string FollowInstrument::description() const {
    return "lines added to " + m_path.toStdString();
}

void FollowInstrument::connectDevice() {
    const bool passOver = std::exchange(m_passOverOld, false);
    if (!m_file.open(QIODevice::ReadOnly | QIODevice::Unbuffered))
        return lost(m_file.errorString().toStdString());
    m_watcher.addPath(m_path);
    m_poll.start();
    if (passOver)
        m_file.seek(m_file.size());
    opened(startsMidLine() ? StreamStart::midLine : StreamStart::lineStart);
    readOn();
}

void FollowInstrument::disconnectDevice() {
    m_poll.stop();
    m_watcher.removePath(m_path);
    m_file.close();
}

/// Leaves the file at the end of the byte it looks at: where it was.
bool FollowInstrument::startsMidLine() {
    char before = '\n';
    if (m_file.pos() > 0) {
        m_file.seek(m_file.pos() - 1);
        m_file.getChar(&before);
    }
    return before != '\n';
}

void FollowInstrument::look() {
    readOn();
    if (m_file.size() < m_file.pos() || replaced(m_file)) {
        disconnectDevice();
        connectDevice();
    }
}

void FollowInstrument::readOn() {
    for (QByteArray bytes = m_file.read(65536); !bytes.isEmpty(); bytes = m_file.read(65536))
        received({bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

} // namespace ringhold
