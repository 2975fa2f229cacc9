#include "ui/instrument/field_form.h"

#include "core/instrument/instrument_factory.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>

namespace ringhold {

namespace {

QString portWords(const InstrumentFound& port) {
    const QString target = QString::fromStdString(port.target);
    return port.description.empty()
               ? target
               : target + QStringLiteral(" · ") + QString::fromStdString(port.description);
}

/// Who types in the box must not be disturbed without need.
bool showsPorts(const QComboBox& box, const std::vector<InstrumentFound>& ports) {
    if (box.view()->isVisible())
        return true;
    if (box.count() != static_cast<int>(ports.size()))
        return false;
    for (int i = 0; i < box.count(); ++i)
        if (box.itemText(i) != portWords(ports[static_cast<std::size_t>(i)]))
            return false;
    return true;
}

void fillPorts(QComboBox& box, const std::vector<InstrumentFound>& ports) {
    const QString typed = box.currentText();
    const QSignalBlocker quiet(box);
    box.clear();
    for (const auto& port : ports)
        box.addItem(portWords(port), QString::fromStdString(port.target));
    if (typed.isEmpty() && box.count() > 0)
        box.setCurrentIndex(0);
    else
        box.setEditText(typed);
}

} // namespace

QString FieldForm::Entry::value() const {
    if (line)
        return line->text().trimmed();
    // A choice has a value behind its words; what was typed is its own.
    const int index = box->findText(box->currentText());
    return index >= 0 ? box->itemData(index).toString() : box->currentText().trimmed();
}

void FieldForm::Entry::set(const QString& value) const {
    if (line)
        return line->setText(value);
    if (box->findData(value) < 0 && !box->isEditable())
        box->addItem(value, value); // none of the usual ones, but told
    if (const int index = box->findData(value); index >= 0)
        box->setCurrentIndex(index);
    else
        box->setEditText(value);
}

FieldForm::FieldForm(QWidget* parent) : QWidget(parent), m_form(new QFormLayout(this)) {
    m_form->setContentsMargins(0, 0, 0, 0);
    m_form->setSpacing(8);
}

void FieldForm::showKind(const QString& scheme) {
    while (m_form->rowCount() > 0)
        m_form->removeRow(0);
    m_entries.clear();
    m_rest.clear();
    m_scheme = scheme;
    for (const auto& field : instrumentFields(scheme)) {
        Entry entry{field};
        m_form->addRow(field.words, make(entry));
        m_entries.push_back(entry);
    }
    Q_EMIT changed();
}

QWidget* FieldForm::make(Entry& entry) {
    using Kind = InstrumentField::Kind;
    const auto& field = entry.field;
    if (field.kind == Kind::choice || field.kind == Kind::port) {
        entry.box = new QComboBox;
        entry.box->setEditable(field.kind == Kind::port);
        entry.box->setAccessibleName(field.words);
        for (const auto& [value, words] : field.choices)
            entry.box->addItem(words, value);
        entry.set(field.usual);
        if (entry.box->lineEdit())
            entry.box->lineEdit()->setPlaceholderText(field.example);
        connect(entry.box, &QComboBox::currentTextChanged, this, &FieldForm::changed);
        return entry.box;
    }
    entry.line = new QLineEdit(field.usual);
    entry.line->setAccessibleName(field.words);
    entry.line->setPlaceholderText(field.example);
    connect(entry.line, &QLineEdit::textChanged, this, &FieldForm::changed);
    return field.kind == Kind::file ? makeFile(entry) : entry.line;
}

QWidget* FieldForm::makeFile(Entry& entry) {
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(entry.line, 1);
    auto* look = new QPushButton(tr("Look for it …"));
    row->addWidget(look);
    connect(look, &QPushButton::clicked, this, [this, line = entry.line] {
        const QString file = QFileDialog::getOpenFileName(this, tr("The file"), line->text());
        if (!file.isEmpty())
            line->setText(file);
    });
    return both;
}

void FieldForm::showSpec(const InstrumentSpec& spec) {
    showKind(QString::fromStdString(spec.scheme));
    m_rest = spec.parameters;
    for (const auto& entry : m_entries) {
        if (entry.field.parameter.isEmpty())
            entry.set(QString::fromStdString(spec.target));
        else if (const auto told = m_rest.extract(entry.field.parameter.toStdString()))
            entry.set(QString::fromStdString(told.mapped()));
    }
    Q_EMIT changed();
}

void FieldForm::offerPorts(const std::vector<InstrumentFound>& ports) {
    for (const auto& entry : m_entries)
        if (entry.field.kind == InstrumentField::Kind::port && !showsPorts(*entry.box, ports))
            fillPorts(*entry.box, ports);
    Q_EMIT changed();
}

InstrumentSpec FieldForm::spec() const {
    InstrumentSpec spec;
    spec.scheme = m_scheme.toStdString();
    spec.parameters = m_rest;
    for (const auto& entry : m_entries) {
        const QString value = entry.value();
        if (entry.field.parameter.isEmpty())
            spec.target = value.toStdString();
        else if (value != entry.field.usual && !value.isEmpty())
            spec.parameters[entry.field.parameter.toStdString()] = value.toStdString();
    }
    return spec;
}

} // namespace ringhold
