#include "app/instruments/app_instrument_factory.h"

#include "app/instruments/follow_instrument.h"
#include "app/instruments/modbus_instrument.h"
#include "app/instruments/serial_instrument.h"
#include "app/instruments/spec_reader.h"
#include "app/instruments/tcp_instrument.h"
#include "core/exchange/csv_readings.h"
#include "core/instrument/practice_instrument.h"
#include "core/instrument/replay_instrument.h"
#include "core/kiln/practice_firing.h"

#include <QSerialPortInfo>

#include <charconv>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

using Made = Result<std::unique_ptr<Instrument>>;

Error badSpec(const InstrumentSpec& spec, const std::string& what) {
    return {ErrorKind::badInput, spec.scheme + ": " + what};
}

Made makeSerial(const InstrumentSpec& spec, const Clock& clock) {
    if (spec.target.empty())
        return badSpec(spec, "which port? For instance serial:/dev/ttyUSB0?baud=9600");
    SpecReader reader(spec);
    const auto format = takeLineFormat(reader.left());
    if (!format)
        return format.error();
    auto settings = takeSerialSettings(reader);
    settings.device = QString::fromStdString(spec.target);
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(std::make_unique<SerialInstrument>(settings, *format, clock));
}

/// The port of "host:port"; nothing when there is none. An IPv6 host may stand in brackets.
std::optional<quint16> portOf(const std::string& target, std::string& host) {
    const auto colon = target.rfind(':');
    if (colon == std::string::npos || colon == 0)
        return std::nullopt;
    host = target.substr(0, colon);
    if (host.size() > 2 && host.front() == '[' && host.back() == ']')
        host = host.substr(1, host.size() - 2);
    quint16 port = 0;
    const auto* last = target.data() + target.size();
    const auto [end, error] = std::from_chars(target.data() + colon + 1, last, port);
    return error == std::errc{} && end == last && port > 0 ? std::optional(port) : std::nullopt;
}

Made makeTcp(const InstrumentSpec& spec, const Clock& clock) {
    std::string host;
    const auto port = portOf(spec.target, host);
    if (!port)
        return badSpec(spec, "\"" + spec.target + "\" is not host:port");
    SpecReader reader(spec);
    const auto format = takeLineFormat(reader.left());
    if (!format)
        return format.error();
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(std::make_unique<TcpInstrument>(QString::fromStdString(host), *port, *format, clock));
}

std::vector<int> takeRegisters(SpecReader& reader) {
    std::vector<int> registers;
    const QString text = QString::fromStdString(reader.takeText("register").value_or("0"));
    for (const auto& word : text.split(QLatin1Char(','))) {
        bool read = false;
        const ushort number = word.toUShort(&read);
        if (!read)
            reader.blame("register=" + text.toStdString() +
                         " is no number from 0 to 65535, nor several by commas");
        registers.push_back(number);
    }
    return registers;
}

/// One of two words; the first unless told.
bool takesSecond(SpecReader& reader, const std::string& name, const std::string& first,
                 const std::string& second) {
    const auto given = reader.takeText(name).value_or(first);
    if (given != first && given != second)
        reader.blame(name + " is " + first + " or " + second + ", not " + given);
    return given == second;
}

ModbusQuestion takeQuestion(SpecReader& reader) {
    ModbusQuestion question;
    question.unit = static_cast<int>(reader.takeWhole("unit", 1, 1, 247));
    question.registers = takeRegisters(reader);
    question.scale = reader.takeNumber("scale", 1, 0.0001, 1000);
    if (takesSecond(reader, "table", "holding", "input"))
        question.table = QModbusDataUnit::InputRegisters;
    question.isSigned = !takesSecond(reader, "sign", "signed", "unsigned");
    if (takesSecond(reader, "degrees", "C", "F"))
        question.degrees = TemperatureUnit::fahrenheit;
    question.every = std::chrono::milliseconds(std::lround(1000 * reader.takeNumber("every", 5, 0.2, 3600)));
    return question;
}

Made makeModbusTcp(const InstrumentSpec& spec, const Clock& clock) {
    std::string host;
    const auto port = portOf(spec.target, host);
    if (!port)
        return badSpec(spec, "\"" + spec.target + "\" is not host:port");
    SpecReader reader(spec);
    const auto question = takeQuestion(reader);
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(
        std::make_unique<ModbusInstrument>(ModbusPeer{QString::fromStdString(host), *port}, question, clock));
}

Made makeModbusRtu(const InstrumentSpec& spec, const Clock& clock) {
    if (spec.target.empty())
        return badSpec(spec, "which port? For instance modbus-rtu:/dev/ttyUSB0?unit=1&register=0");
    SpecReader reader(spec);
    const auto question = takeQuestion(reader);
    auto line = takeSerialSettings(reader);
    line.device = QString::fromStdString(spec.target);
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(std::make_unique<ModbusInstrument>(line, question, clock));
}

Made makeFollow(const InstrumentSpec& spec, const Clock& clock) {
    if (spec.target.empty())
        return badSpec(spec, "which file? For instance follow:kiln.txt");
    SpecReader reader(spec);
    const auto format = takeLineFormat(reader.left());
    if (!format)
        return format.error();
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(std::make_unique<FollowInstrument>(QString::fromStdString(spec.target), *format, clock));
}

Made makeReplay(const InstrumentSpec& spec, const Clock& clock) {
    SpecReader reader(spec);
    const double speed = reader.takeNumber("speed", 1, 0.001, KilnPace::fastest);
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    // Elapsed times are replayed as if the firing began now.
    const auto readings =
        readCsv(spec.target, CsvOptions{.zone = {}, .began = clock.now(), .unit = {}, .control = {}});
    if (!readings)
        return readings.error();
    std::vector<Sample> samples;
    for (const auto& channel : readings->channels)
        for (const auto& [at, value] : channel.values)
            samples.push_back(
                {.at = at, .label = channel.label, .quantity = channel.quantity, .value = value});
    return Made(std::make_unique<ReplayInstrument>(std::move(samples), speed, spec.target));
}

Made makePractice(const InstrumentSpec& spec, const Clock&) {
    if (!spec.target.empty())
        return badSpec(spec, "takes no name, only ?seed=1&speed=60");
    SpecReader reader(spec);
    const double speed = reader.takeNumber("speed", 1, 0.001, KilnPace::fastest);
    const long seed = reader.takeWhole("seed", 1, 0, std::numeric_limits<long>::max());
    if (const auto fault = reader.fault(); !fault)
        return fault.error();
    return Made(std::make_unique<PracticeInstrument>(
        drawnPracticeSettings(practicePlan(), static_cast<std::uint64_t>(seed)), speed));
}

struct Scheme {
    const char* name;
    const char* example;
    Made (*make)(const InstrumentSpec&, const Clock&);
};

constexpr Scheme schemes[] = {
    {"serial", "serial:/dev/ttyUSB0?baud=9600", makeSerial},
    {"tcp", "tcp:192.168.1.20:4001", makeTcp},
    {"modbus-tcp", "modbus-tcp:192.168.1.20:502?unit=1&register=0&scale=0.1", makeModbusTcp},
    {"modbus-rtu", "modbus-rtu:/dev/ttyUSB0?unit=1&register=0&scale=0.1", makeModbusRtu},
    {"follow", "follow:kiln.txt", makeFollow},
    {"replay", "replay:firing.csv?speed=60", makeReplay},
    {"practice", "practice:?seed=1&speed=60", makePractice},
};

} // namespace

std::vector<InstrumentKind> AppInstrumentFactory::kinds() const {
    std::vector<InstrumentKind> all;
    for (const auto& scheme : schemes)
        all.push_back({scheme.name, scheme.example});
    return all;
}

/// Ports with something plugged in; those of the board, which are there always, last.
std::vector<InstrumentFound> AppInstrumentFactory::found() const {
    std::vector<InstrumentFound> plugged;
    std::vector<InstrumentFound> builtIn;
    for (const auto& port : QSerialPortInfo::availablePorts()) {
        const QString words = port.description().isEmpty() ? port.manufacturer() : port.description();
        (port.hasVendorIdentifier() ? plugged : builtIn)
            .push_back({"serial", port.systemLocation().toStdString(), words.toStdString()});
    }
    plugged.insert(plugged.end(), builtIn.begin(), builtIn.end());
    return plugged;
}

Made AppInstrumentFactory::make(const InstrumentSpec& spec) {
    std::string known;
    for (const auto& scheme : schemes) {
        if (spec.scheme == scheme.name)
            return scheme.make(spec, m_clock);
        known += known.empty() ? scheme.name : std::string(", ") + scheme.name;
    }
    return Error{ErrorKind::badInput,
                 "there is no kind of instrument \"" + spec.scheme + "\"; there are " + known};
}

} // namespace ringhold
