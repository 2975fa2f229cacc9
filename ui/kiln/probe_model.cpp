#include "ui/kiln/probe_model.h"

#include "ui/common/cell_delegate.h"
#include "ui/common/dates.h"
#include "ui/session/notebook.h"

#include <algorithm>
#include <tuple>

namespace ringhold {

namespace {

ProbeColumn columnOf(const QModelIndex& index) {
    return static_cast<ProbeColumn>(index.column());
}

auto fields(const Probe& p) {
    return std::tie(p.id, p.label, p.type, p.position, p.fitted, p.retired);
}

QString nameOf(ThermocoupleType type) {
    const auto letter = name(type);
    return QString::fromLatin1(letter.data(), static_cast<qsizetype>(letter.size()));
}

} // namespace

ProbeModel::ProbeModel(Notebook& notebook, QObject* parent)
    : QAbstractTableModel(parent), m_notebook(notebook) {}

void ProbeModel::show(std::optional<KilnId> kiln, std::vector<Probe> probes, std::set<ProbeId> told) {
    m_told = std::move(told);
    const auto same = [](const Probe& a, const Probe& b) { return fields(a) == fields(b); };
    if (kiln == m_kiln && std::ranges::equal(probes, m_probes, same))
        return;
    beginResetModel();
    m_kiln = kiln;
    m_probes = std::move(probes);
    endResetModel();
}

int ProbeModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_probes.size()) + (m_kiln ? 1 : 0);
}

int ProbeModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : probeColumns;
}

QString ProbeModel::text(const Probe& probe, ProbeColumn column, bool typed) const {
    const auto day = [&](const std::optional<Instant>& at) {
        const auto& preferences = m_notebook.preferences();
        return !at ? QString() : typed ? typedDate(*at, preferences) : shortDate(*at, preferences);
    };
    switch (column) {
    case ProbeColumn::label:
        return QString::fromStdString(probe.label);
    case ProbeColumn::type:
        return nameOf(probe.type);
    case ProbeColumn::position:
        return QString::fromStdString(probe.position);
    case ProbeColumn::fitted:
        return day(probe.fitted);
    case ProbeColumn::retired:
        return day(probe.retired);
    }
    return {};
}

QVariant ProbeModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (isNewRow(index.row())) {
        const bool inviting = columnOf(index) == ProbeColumn::label;
        if (inviting && role == Qt::DisplayRole)
            return tr("new probe …");
        return inviting && role == invitingRole ? QVariant(true) : QVariant();
    }
    if (role == Qt::DisplayRole || role == Qt::EditRole)
        return text(probe(index.row()), columnOf(index), role == Qt::EditRole);
    return {};
}

QVariant ProbeModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole)
        return {};
    if (orientation == Qt::Vertical)
        return section + 1;
    return QStringList{tr("Probe"), tr("Type"), tr("Where it sits"), tr("Fitted"), tr("Retired")}.value(
        section);
}

Qt::ItemFlags ProbeModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    const bool editable = !isNewRow(index.row()) || columnOf(index) == ProbeColumn::label;
    return editable ? flags | Qt::ItemIsEditable : flags;
}

QString ProbeModel::put(const QString& value, ProbeColumn column, Probe& probe) const {
    const bool settled = m_told.contains(probe.id);
    switch (column) {
    case ProbeColumn::label:
        probe.label = value.toStdString();
        return value.isEmpty() ? tr("A probe has a name, such as T1.") : QString();
    case ProbeColumn::type: {
        const auto type = thermocoupleTypeNamed(value.toStdString());
        probe.type = type.value_or(probe.type);
        return !type     ? tr("A thermocouple is of type B, E, J, K, N, R, S or T.")
               : settled ? tr("Firings have told this probe’s offset. Another thermocouple is another probe: "
                              "use “Replace”.")
                         : QString();
    }
    case ProbeColumn::position:
        probe.position = value.toStdString();
        return settled ? tr("Firings have told this probe’s offset here. Elsewhere it starts afresh: use "
                            "“Replace”.")
                       : QString();
    case ProbeColumn::fitted:
    case ProbeColumn::retired: {
        auto& at = column == ProbeColumn::fitted ? probe.fitted : probe.retired;
        const auto day = dayTyped(value, m_notebook.preferences());
        if (!value.isEmpty() && !day)
            return tr("A day is written as 2026-03-01.");
        at = value.isEmpty() ? std::nullopt : std::optional(*day);
        return probe.fitted && probe.retired && *probe.retired < *probe.fitted
                   ? tr("A probe is not retired before it is fitted.")
                   : QString();
    }
    }
    return {};
}

bool ProbeModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole || !m_kiln)
        return false;
    const QString typed = value.toString().trimmed();
    if (isNewRow(index.row())) {
        if (columnOf(index) != ProbeColumn::label || typed.isEmpty())
            return false;
        return add({{}, *m_kiln, typed.toStdString(), ThermocoupleType::K, {}, m_notebook.clock().now(), {}});
    }
    Probe changed = probe(index.row());
    if (typed == text(changed, columnOf(index), true))
        return true;
    const QString wrong = put(typed, columnOf(index), changed);
    return wrong.isEmpty() ? alter(index.row(), changed) : refuse(wrong);
}

bool ProbeModel::replace(int row) {
    Probe old = probe(row);
    Probe fresh = old;
    old.retired = fresh.fitted = m_notebook.clock().now();
    fresh.retired.reset();
    return alter(row, old) && add(fresh);
}

bool ProbeModel::refuse(const QString& why) {
    Q_EMIT troubled(why);
    return false;
}

bool ProbeModel::add(Probe probe) {
    const auto id = m_notebook.writer().add(probe);
    if (!id)
        return refuse(QString::fromStdString(id.error().text()));
    probe.id = *id;
    const int row = static_cast<int>(m_probes.size());
    beginInsertRows({}, row, row);
    m_probes.push_back(std::move(probe));
    endInsertRows();
    Q_EMIT written();
    return true;
}

bool ProbeModel::alter(int row, const Probe& probe) {
    if (const auto done = m_notebook.writer().alter(probe); !done)
        return refuse(QString::fromStdString(done.error().text()));
    m_probes[static_cast<std::size_t>(row)] = probe;
    Q_EMIT dataChanged(index(row, 0), index(row, probeColumns - 1));
    Q_EMIT written();
    return true;
}

} // namespace ringhold
