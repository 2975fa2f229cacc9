#include "ui/kiln/kiln_form.h"

#include "ui/common/words_on_page.h"
#include "ui/kiln/kiln_list_model.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr double watts = 1000; ///< in a kilowatt

QString numberText(std::optional<double> value) {
    return value ? QString::number(*value, 'g', 10) : QString();
}

bool same(const Kiln& a, const Kiln& b) {
    return a.name == b.name && a.fuel == b.fuel && a.volume_L == b.volume_L && a.ratedPower == b.ratedPower &&
           a.ratedVolts == b.ratedVolts && a.pricePerKilowattHour == b.pricePerKilowattHour &&
           a.gasPrice == b.gasPrice && a.note == b.note;
}

} // namespace

KilnForm::KilnForm(QWidget* parent) : QWidget(parent), m_form(new QFormLayout(this)), m_fuel(new QComboBox) {
    m_form->setContentsMargins(0, 0, 0, 0);
    m_form->setVerticalSpacing(6);
    m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    m_name = addField(tr("Name"), tr("Heron"));
    for (const auto fuel : {Fuel::electric, Fuel::gas, Fuel::wood})
        m_fuel->addItem(fuelWords(fuel), static_cast<int>(fuel));
    m_fuel->setAccessibleName(tr("Fuel"));
    m_form->addRow(tr("Fuel"), m_fuel);
    m_volume = addField(tr("Volume, L"), tr("150"));
    m_power = addField(tr("Rated power, kW"), tr("9.6"));
    m_volts = addField(tr("at volts"), tr("230"));
    m_price = addField(tr("Price of a kWh"), tr("in your own money"));
    m_gasPrice = addField(tr("Price of a m³ of gas"), tr("in your own money"));
    m_note = addField(tr("Note"), {});
    connect(m_fuel, &QComboBox::activated, this, [this] {
        showFuel(static_cast<Fuel>(m_fuel->currentData().toInt()));
        take();
    });
}

KilnForm::Field KilnForm::addField(const QString& label, const QString& hint) {
    Field field{new QLineEdit, new Remark(Remark::Kind::warning), new QWidget};
    auto* column = new QVBoxLayout(field.row);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(field.line);
    column->addWidget(field.trouble);
    field.line->setPlaceholderText(hint);
    field.line->setAccessibleName(label);
    m_form->addRow(label, field.row);
    connect(field.line, &QLineEdit::editingFinished, this, &KilnForm::take);
    return field;
}

void KilnForm::show(const Kiln& kiln) {
    m_kiln = kiln;
    m_name.line->setText(QString::fromStdString(kiln.name));
    m_fuel->setCurrentIndex(m_fuel->findData(static_cast<int>(kiln.fuel)));
    m_volume.line->setText(numberText(kiln.volume_L));
    m_power.line->setText(kiln.ratedPower ? numberText(kiln.ratedPower->watts / watts) : QString());
    m_volts.line->setText(kiln.ratedVolts ? numberText(kiln.ratedVolts->volts) : QString());
    m_price.line->setText(numberText(kiln.pricePerKilowattHour));
    m_gasPrice.line->setText(numberText(kiln.gasPrice));
    m_note.line->setText(QString::fromStdString(kiln.note));
    for (const auto& field : {m_name, m_volume, m_power, m_volts, m_price, m_gasPrice, m_note})
        field.trouble->say({});
    showFuel(kiln.fuel);
}

void KilnForm::showFuel(Fuel fuel) {
    for (const auto& field : {m_power, m_volts, m_price})
        m_form->setRowVisible(field.row, fuel == Fuel::electric);
    m_form->setRowVisible(m_gasPrice.row, fuel == Fuel::gas);
}

void KilnForm::startWriting() {
    m_name.line->setFocus();
}

void KilnForm::refuse(const QString& why) {
    m_name.trouble->say(why);
}

std::optional<double> KilnForm::number(Field& field, bool mayBeZero, bool& good) {
    QString text = field.line->text().trimmed();
    field.trouble->say({});
    if (text.isEmpty())
        return std::nullopt;
    bool isNumber = false;
    const double value = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
    if (isNumber && value < 1e6 && (value > 0 || (mayBeZero && value == 0)))
        return value;
    field.trouble->say(mayBeZero ? tr("A number, not below 0, or nothing.")
                                 : tr("A number above 0, or nothing."));
    good = false;
    return std::nullopt;
}

void KilnForm::take() {
    Kiln told = m_kiln;
    bool good = true;
    told.name = m_name.line->text().trimmed().toStdString();
    told.fuel = static_cast<Fuel>(m_fuel->currentData().toInt());
    told.note = m_note.line->text().trimmed().toStdString();
    const auto litres = number(m_volume, false, good);
    const auto kilowatts = number(m_power, false, good);
    const auto volts = number(m_volts, false, good);
    const auto price = number(m_price, true, good);
    const auto gasPrice = number(m_gasPrice, true, good);
    const bool nameless = told.name.empty();
    m_name.trouble->say(nameless ? tr("A kiln has a name.") : QString());
    if (!good || nameless)
        return;
    // what was not touched keeps every digit
    if (m_volume.line->isModified())
        told.volume_L = litres;
    if (m_price.line->isModified())
        told.pricePerKilowattHour = price;
    if (m_gasPrice.line->isModified())
        told.gasPrice = gasPrice;
    if (m_power.line->isModified())
        told.ratedPower = kilowatts ? std::optional(Power{*kilowatts * watts}) : std::nullopt;
    if (m_volts.line->isModified())
        told.ratedVolts = volts ? std::optional(Volts{*volts}) : std::nullopt;
    if (same(told, m_kiln) && told.id != KilnId{})
        return;
    Q_EMIT written(told);
}

} // namespace ringhold
