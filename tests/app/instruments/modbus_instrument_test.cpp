#include "app/instruments/app_instrument_factory.h"
#include "app/instruments/modbus_instrument.h"
#include "app/system_clock.h"
#include "tests/app/instruments/recording_listener.h"
#include "tests/app/pseudo_terminal.h"

#include <QModbusRtuSerialServer>
#include <QModbusTcpServer>
#include <QSocketNotifier>
#include <QTcpServer>
#include <QVariant>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <array>

namespace ringhold {
namespace {

using testing::ElementsAre;

/// Registers 0 to 3 of unit 1.
void giveRegisters(QModbusServer& server) {
    QModbusDataUnitMap map;
    for (const auto table : {QModbusDataUnit::HoldingRegisters, QModbusDataUnit::InputRegisters})
        map.insert(table, {table, 0, 4});
    server.setMap(map);
    server.setServerAddress(1);
}

void setRegister(QModbusServer& server, quint16 number, int counts) {
    server.setData(QModbusDataUnit::HoldingRegisters, number, static_cast<quint16>(counts));
}

quint16 freePort() {
    QTcpServer server;
    server.listen(QHostAddress::LocalHost);
    return server.serverPort();
}

std::unique_ptr<QModbusTcpServer> serverAt(quint16 port) {
    auto server = std::make_unique<QModbusTcpServer>();
    giveRegisters(*server);
    server->setConnectionParameter(QModbusDevice::NetworkAddressParameter, QStringLiteral("127.0.0.1"));
    server->setConnectionParameter(QModbusDevice::NetworkPortParameter, port);
    EXPECT_TRUE(server->connectDevice());
    return server;
}

ModbusQuestion tenths() {
    ModbusQuestion question;
    question.scale = 0.1;
    question.every = std::chrono::milliseconds(30);
    return question;
}

class ModbusTcp : public testing::Test {
  protected:
    std::unique_ptr<ModbusInstrument> opened(const ModbusQuestion& question) {
        auto instrument = std::make_unique<ModbusInstrument>(ModbusPeer{QStringLiteral("127.0.0.1"), m_port},
                                                             question, m_clock);
        instrument->setRetryAfter(std::chrono::milliseconds(50));
        instrument->setPatience(std::chrono::milliseconds(100));
        EXPECT_TRUE(instrument->open(m_heard).ok());
        return instrument;
    }

    SystemClock m_clock;
    quint16 m_port = freePort();
    RecordingListener m_heard;
};

TEST_F(ModbusTcp, ReadsARegisterAgainAndAgain) {
    const auto server = serverAt(m_port);
    setRegister(*server, 0, 10432);
    const auto instrument = opened(tenths());
    ASSERT_TRUE(m_heard.waitForSamples(1));
    setRegister(*server, 0, -15);
    ASSERT_TRUE(QTest::qWaitFor([&] { return m_heard.values().back() < 0; }, 10'000));
    EXPECT_NEAR(m_heard.values().front(), 1043.2, 1e-9);
    EXPECT_NEAR(m_heard.values().back(), -1.5, 1e-9);
    EXPECT_EQ(m_heard.lines.front(), std::pair(std::string("holding register 0: 10432"), true));
    EXPECT_THAT(m_heard.links, ElementsAre(LinkState::waiting, LinkState::connected));
    EXPECT_LT(m_heard.samples[0].at, m_heard.samples[1].at);
}

TEST_F(ModbusTcp, SeveralRegistersAreSeveralProbes) {
    const auto server = serverAt(m_port);
    setRegister(*server, 1, 1910);
    setRegister(*server, 3, 1700);
    auto question = tenths();
    question.registers = {1, 3};
    question.scale = 1;
    question.degrees = TemperatureUnit::fahrenheit;
    const auto instrument = opened(question);
    ASSERT_TRUE(m_heard.waitForSamples(2));
    EXPECT_EQ(m_heard.samples[0].label, "register 1");
    EXPECT_EQ(m_heard.samples[1].label, "register 3");
    EXPECT_NEAR(*m_heard.samples[0].value, (1910 - 32) / 1.8, 1e-9);
}

TEST_F(ModbusTcp, WhatNoKilnCanBeIsALineThatCannotBeRead) {
    const auto server = serverAt(m_port);
    setRegister(*server, 0, 32767);
    const auto instrument = opened(tenths());
    ASSERT_TRUE(QTest::qWaitFor([&] { return m_heard.lines.size() >= 2; }, 10'000));
    EXPECT_FALSE(m_heard.lines[0].second);
    EXPECT_TRUE(m_heard.samples.empty());
}

TEST_F(ModbusTcp, ALostLinkIsTriedAgain) {
    auto server = serverAt(m_port);
    setRegister(*server, 0, 9000);
    const auto instrument = opened(tenths());
    ASSERT_TRUE(m_heard.waitForSamples(1));
    server.reset();
    ASSERT_TRUE(m_heard.waitForLink(LinkState::lost));
    const auto before = m_heard.samples.size();
    server = serverAt(m_port);
    setRegister(*server, 0, 9010);
    ASSERT_TRUE(m_heard.waitForSamples(before + 1));
    EXPECT_NEAR(m_heard.values().back(), 901, 1e-9);
}

TEST_F(ModbusTcp, ARegisterThatIsNotThereIsALostLink) {
    const auto server = serverAt(m_port);
    auto question = tenths();
    question.registers = {50};
    const auto instrument = opened(question);
    EXPECT_TRUE(m_heard.waitForLink(LinkState::lost));
    EXPECT_TRUE(m_heard.samples.empty());
}

TEST_F(ModbusTcp, AnotherUnitThatIsSilentIsALostLink) {
    const auto server = serverAt(m_port);
    auto question = tenths();
    question.unit = 7;
    const auto instrument = opened(question);
    EXPECT_TRUE(m_heard.waitForLink(LinkState::lost));
}

/// A null-modem cable between two pseudo-terminals.
class Cable {
  public:
    Cable() : m_fromA(a.descriptor(), QSocketNotifier::Read), m_fromB(b.descriptor(), QSocketNotifier::Read) {
        QObject::connect(&m_fromA, &QSocketNotifier::activated,
                         [this] { carry(a.descriptor(), b.descriptor()); });
        QObject::connect(&m_fromB, &QSocketNotifier::activated,
                         [this] { carry(b.descriptor(), a.descriptor()); });
    }
    PseudoTerminal a;
    PseudoTerminal b;

  private:
    static void carry(int from, int to) {
        std::array<char, 256> bytes{};
        const auto count = ::read(from, bytes.data(), bytes.size());
        if (count > 0 && ::write(to, bytes.data(), static_cast<std::size_t>(count)) != count)
            ADD_FAILURE() << "the cable is full";
    }
    QSocketNotifier m_fromA;
    QSocketNotifier m_fromB;
};

TEST(ModbusRtu, ReadsOverASerialLine) {
    const SystemClock clock;
    Cable cable;
    QModbusRtuSerialServer server;
    giveRegisters(server);
    setRegister(server, 2, 1075);
    server.setConnectionParameter(QModbusDevice::SerialPortNameParameter,
                                  QString::fromStdString(cable.b.device()));
    ASSERT_TRUE(server.connectDevice()) << server.errorString().toStdString();
    SerialSettings line;
    line.device = QString::fromStdString(cable.a.device());
    line.baud = 19200;
    ModbusQuestion question;
    question.registers = {2};
    question.every = std::chrono::milliseconds(50);
    ModbusInstrument instrument(line, question, clock);
    RecordingListener heard;
    ASSERT_TRUE(instrument.open(heard).ok());
    ASSERT_TRUE(heard.waitForSamples(3));
    EXPECT_DOUBLE_EQ(heard.values().front(), 1075);
    EXPECT_THAT(heard.links, ElementsAre(LinkState::waiting, LinkState::connected));
    instrument.close();
}

TEST(ModbusRtu, WaitsForAPortThatIsNotThere) {
    const SystemClock clock;
    SerialSettings line;
    line.device = QStringLiteral("/dev/ringhold-no-such-port");
    ModbusInstrument instrument(line, {}, clock);
    RecordingListener heard;
    ASSERT_TRUE(instrument.open(heard).ok());
    EXPECT_TRUE(heard.waitForLink(LinkState::lost));
}

struct SpecCase {
    const char* spec;
    const char* complaint; ///< empty: it can be made
};

class ModbusSpec : public testing::TestWithParam<SpecCase> {};

TEST_P(ModbusSpec, IsReadOrRefusedWithAReason) {
    const SystemClock clock;
    AppInstrumentFactory factory(clock);
    const auto spec = parseInstrumentSpec(GetParam().spec);
    ASSERT_TRUE(spec.ok());
    const auto made = factory.make(*spec);
    EXPECT_EQ(made.ok(), *GetParam().complaint == '\0');
    if (!made.ok()) {
        EXPECT_EQ(made.error().kind, ErrorKind::badInput);
        EXPECT_THAT(made.error().text(), testing::HasSubstr(GetParam().complaint));
    }
}

INSTANTIATE_TEST_SUITE_P(
    Specs, ModbusSpec,
    testing::Values(SpecCase{"modbus-tcp:10.0.0.7:502?unit=1&register=0&scale=0.1", ""},
                    SpecCase{"modbus-tcp:10.0.0.7:502?register=0,1&table=input&sign=unsigned&degrees=F", ""},
                    SpecCase{"modbus-rtu:/dev/ttyUSB0?unit=3&baud=19200&parity=even&every=2", ""},
                    SpecCase{"modbus-tcp:10.0.0.7", "is not host:port"},
                    SpecCase{"modbus-tcp:10.0.0.7:502?unit=300", "unit=300"},
                    SpecCase{"modbus-tcp:10.0.0.7:502?register=1,x", "register=1,x"},
                    SpecCase{"modbus-tcp:10.0.0.7:502?table=coil", "table is holding or input"},
                    SpecCase{"modbus-tcp:10.0.0.7:502?baud=9600", "baud"},
                    SpecCase{"modbus-rtu:", "which port"}));

} // namespace
} // namespace ringhold
