#include "app/instruments/modbus_instrument.h"

#include <QModbusReply>
#include <QModbusRtuSerialClient>
#include <QModbusTcpClient>
#include <QVariant>
#include <fmt/format.h>

namespace ringhold {

namespace {

constexpr auto coldest = Temperature::fromCelsius(-50);
constexpr auto hottest = Temperature::fromCelsius(1800);
constexpr int retries = 2;

std::unique_ptr<QModbusClient> clientFor(const ModbusPeer& peer) {
    auto client = std::make_unique<QModbusTcpClient>();
    client->setConnectionParameter(QModbusDevice::NetworkAddressParameter, peer.host);
    client->setConnectionParameter(QModbusDevice::NetworkPortParameter, peer.port);
    return client;
}

std::unique_ptr<QModbusClient> clientFor(const SerialSettings& line) {
    auto client = std::make_unique<QModbusRtuSerialClient>();
    client->setConnectionParameter(QModbusDevice::SerialPortNameParameter, line.device);
    client->setConnectionParameter(QModbusDevice::SerialBaudRateParameter, line.baud);
    client->setConnectionParameter(QModbusDevice::SerialDataBitsParameter, line.dataBits);
    client->setConnectionParameter(QModbusDevice::SerialParityParameter, line.parity);
    client->setConnectionParameter(QModbusDevice::SerialStopBitsParameter, line.stopBits);
    return client;
}

std::string describe(const ModbusPeer& peer) {
    return peer.host.toStdString() + " port " + std::to_string(peer.port);
}

std::string describe(const SerialSettings& line) {
    return line.device.toStdString() + " at " + std::to_string(line.baud) + " baud";
}

} // namespace

std::optional<Temperature> temperatureIn(quint16 counts, const ModbusQuestion& question) {
    const double degrees =
        question.scale * (question.isSigned ? double(static_cast<qint16>(counts)) : double(counts));
    const auto told = question.degrees == TemperatureUnit::fahrenheit ? Temperature::fromFahrenheit(degrees)
                                                                      : Temperature::fromCelsius(degrees);
    return told < coldest || told > hottest ? std::nullopt : std::optional(told);
}

ModbusInstrument::ModbusInstrument(Wire wire, ModbusQuestion question, const Clock& clock)
    : LinkedInstrument(clock), m_wire(std::move(wire)), m_question(std::move(question)) {
    m_next.setInterval(m_question.every);
    connect(&m_next, &QTimer::timeout, this, [this] { ask(); });
}

ModbusInstrument::~ModbusInstrument() {
    close();
}

std::string ModbusInstrument::description() const {
    return fmt::format("{}, Modbus unit {}",
                       std::visit([](const auto& wire) { return describe(wire); }, m_wire), m_question.unit);
}

void ModbusInstrument::connectDevice() {
    m_client = std::visit([](const auto& wire) { return clientFor(wire); }, m_wire);
    m_client->setTimeout(static_cast<int>(m_patience.count()));
    m_client->setNumberOfRetries(retries);
    connect(m_client.get(), &QModbusClient::stateChanged, this, [this](QModbusDevice::State state) {
        if (state != QModbusDevice::ConnectedState)
            return;
        tell(LinkState::waiting);
        m_next.start();
        ask();
    });
    connect(m_client.get(), &QModbusClient::errorOccurred, this, [this](QModbusDevice::Error error) {
        if (error == QModbusDevice::ConnectionError || error == QModbusDevice::ReadError ||
            error == QModbusDevice::WriteError)
            lost(m_client->errorString().toStdString());
    });
    if (!m_client->connectDevice() && m_client->error() == QModbusDevice::NoError)
        lost("the link could not be opened");
}

void ModbusInstrument::disconnectDevice() {
    m_next.stop();
    m_asking = false;
    if (!m_client)
        return;
    // It may be telling of its error just now.
    auto* client = m_client.release();
    client->disconnect(this);
    client->disconnectDevice();
    client->deleteLater();
}

/// A slow unit is not asked again before it has answered all.
void ModbusInstrument::ask() {
    if (std::exchange(m_asking, true))
        return;
    askFor(0);
}

/// One after the other: many units take a single question at a time.
void ModbusInstrument::askFor(std::size_t index) {
    m_asking = m_client && index < m_question.registers.size();
    if (!m_asking)
        return;
    const QModbusDataUnit wanted(m_question.table, m_question.registers[index], 1);
    auto* reply = m_client->sendReadRequest(wanted, m_question.unit);
    if (!reply)
        return lost(m_client->errorString().toStdString());
    if (reply->isFinished()) {
        hear(*reply, index);
        reply->deleteLater();
        return;
    }
    connect(reply, &QModbusReply::finished, this, [this, reply, index, client = m_client.get()] {
        reply->deleteLater();
        if (client == m_client.get())
            hear(*reply, index);
    });
}

void ModbusInstrument::hear(QModbusReply& reply, std::size_t index) {
    const int number = m_question.registers[index];
    if (reply.error() == QModbusDevice::TimeoutError)
        return lost(fmt::format("unit {} does not answer", m_question.unit));
    if (reply.error() == QModbusDevice::ProtocolError)
        return lost(fmt::format("unit {} refuses register {}: {}", m_question.unit, number,
                                reply.errorString().toStdString()));
    if (reply.error() != QModbusDevice::NoError || reply.result().valueCount() != 1)
        return lost(reply.errorString().toStdString());
    tell(LinkState::connected);
    tellRegister(number, reply.result().value(0));
    askFor(index + 1);
}

void ModbusInstrument::tellRegister(int number, quint16 counts) {
    if (!listener())
        return;
    const auto told = temperatureIn(counts, m_question);
    const char* table = m_question.table == QModbusDataUnit::InputRegisters ? "input" : "holding";
    listener()->onLine(fmt::format("{} register {}: {}", table, number, counts), told.has_value());
    if (!told)
        return;
    Sample sample;
    sample.at = nextInstant();
    sample.label = m_question.registers.size() > 1 ? fmt::format("register {}", number) : std::string();
    sample.value = told->celsius();
    if (listener())
        listener()->onSample(sample);
}

} // namespace ringhold
