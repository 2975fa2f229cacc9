#include "core/instrument/instrument_factory.h"
#include "core/instrument/spec_text.h"
#include "ui/instrument/field_form.h"

#include <QComboBox>
#include <QLineEdit>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

std::string textOf(const FieldForm& form) {
    const auto text = specText(form.spec());
    return text ? *text : text.error().text();
}

template <class Field>
Field* named(const FieldForm& form, const char* words) {
    for (auto* field : form.findChildren<Field*>())
        if (field->accessibleName() == QString::fromUtf8(words))
            return field;
    return nullptr;
}

class SpecThroughForm : public testing::TestWithParam<const char*> {};

TEST_P(SpecThroughForm, ComesOutAsItWentIn) {
    const auto spec = parseInstrumentSpec(GetParam());
    ASSERT_TRUE(spec.ok());
    FieldForm form;
    form.showSpec(*spec);
    EXPECT_EQ(textOf(form), GetParam());
}

INSTANTIATE_TEST_SUITE_P(Specs, SpecThroughForm,
                         testing::Values("serial:/dev/ttyUSB0?baud=19200", "serial:/dev/ttyS0?baud=1234567",
                                         "serial:/dev/ttyS0?data=7&decimal=comma&parity=even&type=K&unit=F",
                                         "tcp:10.0.0.7:4001",
                                         "modbus-tcp:10.0.0.7:502?register=0,1&scale=0.1&unit=3",
                                         "modbus-rtu:/dev/ttyUSB1?degrees=F&table=input",
                                         "follow:/tmp/kiln log.txt", "practice:?seed=7&speed=60",
                                         "somethingelse:there?a=b"));

TEST(FieldForm, BuildsTheTextFromWhatIsFilledIn) {
    FieldForm form;
    form.showKind(QStringLiteral("modbus-tcp"));
    named<QLineEdit>(form, "Host and port")->setText(QStringLiteral("192.168.1.20:502"));
    named<QLineEdit>(form, "One count is")->setText(QStringLiteral("0.1"));
    named<QComboBox>(form, "Kept as")->setCurrentIndex(1);
    EXPECT_EQ(textOf(form), "modbus-tcp:192.168.1.20:502?scale=0.1&table=input");
}

TEST(FieldForm, OffersThePortsAndKeepsWhatWasTyped) {
    FieldForm form;
    form.showKind(QStringLiteral("serial"));
    form.offerPorts({{"serial", "/dev/ttyUSB0", "USB serial"}, {"serial", "/dev/ttyS0", ""}});
    EXPECT_EQ(textOf(form), "serial:/dev/ttyUSB0");
    auto* port = named<QComboBox>(form, "Port");
    ASSERT_TRUE(port);
    EXPECT_EQ(port->count(), 2);
    port->setEditText(QStringLiteral("/dev/kiln"));
    form.offerPorts({});
    EXPECT_EQ(textOf(form), "serial:/dev/kiln");
}

TEST(FieldForm, ANameThatWouldBreakTheTextIsRefused) {
    FieldForm form;
    form.showKind(QStringLiteral("follow"));
    named<QLineEdit>(form, "File")->setText(QStringLiteral("what?.txt"));
    EXPECT_NE(textOf(form).find("question mark"), std::string::npos);
}

} // namespace
} // namespace ringhold
