#include "app/instruments/tcp_instrument.h"
#include "app/system_clock.h"
#include "tests/app/instruments/recording_listener.h"

#include <QTcpServer>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::ElementsAre;

/// The instrument's side of the wire.
class Peer {
  public:
    Peer() { m_server.listen(QHostAddress::LocalHost); }
    quint16 port() const { return m_server.serverPort(); }
    QTcpSocket* accept() {
        if (!QTest::qWaitFor([this] { return m_server.hasPendingConnections(); }, 10'000))
            return nullptr;
        return m_server.nextPendingConnection();
    }

  private:
    QTcpServer m_server;
};

TEST(TcpInstrument, HearsLinesAndConnectsAgain) {
    const SystemClock clock;
    RecordingListener heard;
    Peer peer;
    TcpInstrument instrument(QStringLiteral("127.0.0.1"), peer.port(), LineFormat{}, clock);
    instrument.setRetryAfter(std::chrono::milliseconds(50));
    ASSERT_TRUE(instrument.open(heard).ok());

    auto* wire = peer.accept();
    ASSERT_TRUE(wire);
    ASSERT_TRUE(heard.waitForLink(LinkState::waiting));
    QTest::qWait(250);
    wire->write("1043.2\n");
    ASSERT_TRUE(heard.waitForSamples(1));
    wire->close();
    ASSERT_TRUE(heard.waitForLink(LinkState::lost));

    wire = peer.accept();
    ASSERT_TRUE(wire);
    ASSERT_TRUE(heard.waitForLink(LinkState::waiting));
    QTest::qWait(250);
    wire->write("1044 C\n");
    ASSERT_TRUE(heard.waitForSamples(2));
    EXPECT_THAT(heard.values(), ElementsAre(1043.2, 1044));
    EXPECT_THAT(heard.links, ElementsAre(LinkState::waiting, LinkState::connected, LinkState::lost,
                                         LinkState::waiting, LinkState::connected));
}

TEST(TcpInstrument, ReportsAPeerThatRefuses) {
    const SystemClock clock;
    RecordingListener heard;
    quint16 free = 0;
    {
        const Peer gone;
        free = gone.port();
    }
    TcpInstrument instrument(QStringLiteral("127.0.0.1"), free, LineFormat{}, clock);
    ASSERT_TRUE(instrument.open(heard).ok());
    EXPECT_TRUE(heard.waitForLink(LinkState::lost));
}

} // namespace
} // namespace ringhold
