#include "ui/start/kiln_choice.h"

#include "ui/session/notebook.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>

#include <algorithm>

namespace ringhold {

KilnChoice::KilnChoice(Notebook& notebook, QFormLayout& form, QObject* parent)
    : QObject(parent), m_notebook(notebook), m_kiln(new QComboBox), m_probe(new QComboBox),
      m_type(new QComboBox) {
    m_kiln->setEditable(true);
    m_probe->setEditable(true);
    m_kiln->setAccessibleName(tr("Kiln"));
    m_probe->setAccessibleName(tr("Probe"));
    m_type->setAccessibleName(tr("Thermocouple type"));
    m_kiln->lineEdit()->setPlaceholderText(tr("name of the kiln"));
    m_probe->lineEdit()->setPlaceholderText(tr("name of the probe"));
    auto* probe = new QHBoxLayout;
    probe->addWidget(m_probe, 1);
    probe->addWidget(m_type);
    form.addRow(tr("Kiln"), m_kiln);
    form.addRow(tr("Probe"), probe);
    fillTypes();
    connect(m_kiln, &QComboBox::currentTextChanged, this, &KilnChoice::fillProbes);
    connect(m_probe, &QComboBox::currentTextChanged, this, &KilnChoice::showType);
    connect(&notebook, &Notebook::bookChanged, this, &KilnChoice::fillKilns);
    fillKilns();
}

void KilnChoice::fillTypes() {
    for (const auto type :
         {ThermocoupleType::K, ThermocoupleType::N, ThermocoupleType::S, ThermocoupleType::R,
          ThermocoupleType::B, ThermocoupleType::E, ThermocoupleType::J, ThermocoupleType::T}) {
        const auto letter = name(type);
        m_type->addItem(
            tr("type %1").arg(QString::fromUtf8(letter.data(), static_cast<qsizetype>(letter.size()))),
            static_cast<int>(type));
    }
}

void KilnChoice::fillKilns() {
    const QString before = m_kiln->currentText();
    m_kiln->clear();
    if (const auto kilns = m_notebook.reader().kilns())
        for (const auto& kiln : *kilns)
            m_kiln->addItem(QString::fromStdString(kiln.name));
    if (!before.isEmpty())
        m_kiln->setCurrentText(before);
    fillProbes();
}

std::vector<Probe> KilnChoice::probesInUse() const {
    const auto kiln = m_notebook.reader().kilnNamed(m_kiln->currentText().trimmed().toStdString());
    if (!kiln || !*kiln)
        return {};
    auto probes = m_notebook.reader().probes((*kiln)->id);
    if (!probes)
        return {};
    std::erase_if(*probes, [](const Probe& probe) { return probe.retired.has_value(); });
    return *probes;
}

void KilnChoice::fillProbes() {
    const QString before = m_probe->currentText();
    m_probe->clear();
    const auto probes = probesInUse();
    for (const auto& probe : probes)
        m_probe->addItem(QString::fromStdString(probe.label));
    if (probes.empty()) // a new kiln: what was typed stays
        m_probe->setCurrentText(before);
    showType();
}

/// A known probe is of the type that the book says.
void KilnChoice::showType() {
    const auto probes = probesInUse();
    const auto known =
        std::ranges::find(probes, m_probe->currentText().trimmed().toStdString(), &Probe::label);
    m_type->setEnabled(known == probes.end());
    if (known != probes.end())
        m_type->setCurrentIndex(m_type->findData(static_cast<int>(known->type)));
}

Result<KilnId> KilnChoice::kiln() {
    Kiln kiln;
    kiln.name = m_kiln->currentText().trimmed().toStdString();
    if (kiln.name.empty())
        return Error{ErrorKind::badInput, tr("Give the kiln a name.").toStdString()};
    const auto known = m_notebook.reader().kilnNamed(kiln.name);
    if (!known)
        return known.error();
    return *known ? Result<KilnId>((*known)->id) : m_notebook.writer().add(kiln);
}

Result<std::optional<ProbeId>> KilnChoice::probe(KilnId kiln) {
    Probe probe;
    probe.label = m_probe->currentText().trimmed().toStdString();
    if (probe.label.empty())
        return std::optional<ProbeId>();
    for (const auto& known : probesInUse())
        if (known.label == probe.label)
            return std::optional(known.id);
    probe.kiln = kiln;
    probe.type = static_cast<ThermocoupleType>(m_type->currentData().toInt());
    probe.fitted = m_notebook.clock().now();
    const auto added = m_notebook.writer().add(probe);
    if (!added)
        return added.error();
    return std::optional(*added);
}

} // namespace ringhold
