#include "ui/instrument/instrument_fields.h"

#include <QCoreApplication>

#include <iterator>

namespace ringhold {

namespace {

using Fields = std::vector<InstrumentField>;
using Kind = InstrumentField::Kind;

QString tr(const char* words) {
    return QCoreApplication::translate("ringhold::InstrumentFields", words);
}

QString plain(const char* text) {
    return QString::fromLatin1(text);
}

struct Title {
    const char* scheme;
    const char* title;
    const char* words;
};

constexpr Title titles[] = {
    {"serial", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Serial line"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "A meter or controller that sends lines of text over a cable, by USB as a rule.")},
    {"tcp", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Network (TCP)"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "Lines of text from a box on the network, such as a serial line server.")},
    {"modbus-tcp", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Modbus over the network"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "A controller that is asked for its registers. It is only read, never set.")},
    {"modbus-rtu", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Modbus on a serial line"),
     QT_TRANSLATE_NOOP(
         "ringhold::InstrumentFields",
         "A controller that is asked for its registers over RS-485 or USB. It is only read, never set.")},
    {"follow", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "File that another program writes"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "Lines are read as they are added; what is in the file already is passed over.")},
    {"replay", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Old firing played again"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "The readings of a CSV file, to look at or to learn by.")},
    {"practice", QT_TRANSLATE_NOOP("ringhold::InstrumentFields", "Practice kiln"),
     QT_TRANSLATE_NOOP("ringhold::InstrumentFields",
                       "A reckoned kiln to learn by, which fires a plan of its own.")},
};

const Title* titleOf(const QString& scheme) {
    for (const auto& title : titles)
        if (scheme == QLatin1String(title.scheme))
            return &title;
    return nullptr;
}

void append(Fields& fields, Fields more) {
    std::move(more.begin(), more.end(), std::back_inserter(fields));
}

InstrumentField hostAndPort(const char* example) {
    return {{}, tr("Host and port"), Kind::text, {}, {}, plain(example)};
}

InstrumentField port() {
    return {{}, tr("Port"), Kind::port, {}, {}, plain("/dev/ttyUSB0")};
}

Fields lineSettings() {
    Fields fields;
    fields.push_back({plain("baud"), tr("Baud"), Kind::choice, plain("9600"), {}, {}});
    for (const char* baud : {"1200", "2400", "4800", "9600", "19200", "38400", "57600", "115200"})
        fields.back().choices.emplace_back(plain(baud), plain(baud));
    fields.push_back({plain("parity"),
                      tr("Parity"),
                      Kind::choice,
                      plain("none"),
                      {{plain("none"), tr("none")}, {plain("even"), tr("even")}, {plain("odd"), tr("odd")}}});
    fields.push_back({plain("stop"),
                      tr("Stop bits"),
                      Kind::choice,
                      plain("1"),
                      {{plain("1"), plain("1")}, {plain("2"), plain("2")}}});
    return fields;
}

InstrumentField degrees(const char* parameter, const QString& words) {
    return {
        plain(parameter), words, Kind::choice, plain("C"), {{plain("C"), tr("°C")}, {plain("F"), tr("°F")}}};
}

/// How lines of text are to be read.
Fields lineFormat() {
    InstrumentField thermocouple{
        plain("type"), tr("Millivolts are of a"), Kind::choice, {}, {{{}, tr("no thermocouple")}}};
    for (const char* type : {"K", "N", "S", "R", "B", "E", "J", "T"})
        thermocouple.choices.emplace_back(plain(type), tr("type %1").arg(plain(type)));
    return {degrees("unit", tr("Bare numbers are")),
            thermocouple,
            {plain("cold"), tr("Meter’s terminals, °C"), Kind::text, plain("0"), {}, plain("0")}};
}

Fields registers() {
    return {{plain("unit"), tr("Unit"), Kind::text, plain("1"), {}, plain("1")},
            {plain("register"), tr("Registers, from 0"), Kind::text, plain("0"), {}, plain("0 or 0,1")},
            {plain("table"),
             tr("Kept as"),
             Kind::choice,
             plain("holding"),
             {{plain("holding"), tr("holding registers")}, {plain("input"), tr("input registers")}}},
            {plain("scale"), tr("One count is"), Kind::text, plain("1"), {}, plain("0.1")},
            degrees("degrees", tr("Degrees")),
            {plain("sign"),
             tr("Counts are"),
             Kind::choice,
             plain("signed"),
             {{plain("signed"), tr("signed")}, {plain("unsigned"), tr("unsigned")}}},
            {plain("every"), tr("Ask every, s"), Kind::text, plain("5"), {}, plain("5")}};
}

} // namespace

QString instrumentTitle(const QString& scheme) {
    const auto* title = titleOf(scheme);
    return title ? tr(title->title) : scheme;
}

QString instrumentWords(const QString& scheme) {
    const auto* title = titleOf(scheme);
    return title ? tr(title->words) : QString();
}

Fields instrumentFields(const QString& scheme) {
    Fields fields;
    const auto is = [&scheme](const char* name) { return scheme == QLatin1String(name); };
    if (is("serial") || is("modbus-rtu"))
        fields.push_back(port());
    else if (is("tcp") || is("modbus-tcp"))
        fields.push_back(hostAndPort(is("tcp") ? "192.168.1.20:4001" : "192.168.1.20:502"));
    else if (is("follow") || is("replay"))
        fields.push_back(
            {{}, tr("File"), Kind::file, {}, {}, is("follow") ? plain("kiln.txt") : plain("firing.csv")});
    else if (!is("practice"))
        fields.push_back({{}, tr("Name"), Kind::text, {}});
    if (is("modbus-tcp") || is("modbus-rtu"))
        append(fields, registers());
    if (is("serial") || is("modbus-rtu"))
        append(fields, lineSettings());
    if (is("serial") || is("tcp") || is("follow"))
        append(fields, lineFormat());
    if (is("practice"))
        fields.push_back({plain("seed"), tr("Which kiln"), Kind::text, plain("1"), {}, plain("1")});
    if (is("practice") || is("replay"))
        fields.push_back({plain("speed"), tr("Times as fast"), Kind::text, plain("1"), {}, plain("60")});
    return fields;
}

} // namespace ringhold
