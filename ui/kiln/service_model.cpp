#include "ui/kiln/service_model.h"

#include "core/book/kiln_care.h"
#include "ui/common/cell_delegate.h"
#include "ui/common/dates.h"
#include "ui/session/notebook.h"

#include <QCoreApplication>
#include <QUndoCommand>

#include <algorithm>
#include <array>

namespace ringhold {

/// An entry as it was and as it is to be. Dropped when the book refuses it.
class ServiceChange : public QUndoCommand {
  public:
    ServiceChange(ServiceModel& model, std::optional<ServiceEntry> before, std::optional<ServiceEntry> after,
                  const QString& what)
        : QUndoCommand(what), m_model(model), m_before(std::move(before)), m_after(std::move(after)) {}
    void redo() override { setObsolete(!m_model.apply(m_before, m_after)); }
    void undo() override { setObsolete(!m_model.apply(m_after, m_before)); }

  private:
    ServiceModel& m_model;
    std::optional<ServiceEntry> m_before;
    std::optional<ServiceEntry> m_after;
};

namespace {

constexpr std::array allKinds{ServiceKind::elements, ServiceKind::probe, ServiceKind::relay,
                              ServiceKind::other};

ServiceColumn columnOf(const QModelIndex& index) {
    return static_cast<ServiceColumn>(index.column());
}

/// The kind whose word begins so.
std::optional<ServiceKind> kindMeant(const QString& text) {
    for (const auto kind : allKinds)
        if (!text.isEmpty() && serviceWords(kind).startsWith(text, Qt::CaseInsensitive))
            return kind;
    return std::nullopt;
}

} // namespace

QString serviceWords(ServiceKind kind) {
    switch (kind) {
    case ServiceKind::elements:
        return ServiceModel::tr("elements");
    case ServiceKind::probe:
        return ServiceModel::tr("probe");
    case ServiceKind::relay:
        return ServiceModel::tr("relay");
    case ServiceKind::other:
        break;
    }
    return ServiceModel::tr("other");
}

void ServiceModel::show(std::optional<KilnId> kiln, std::vector<Probe> probes) {
    m_probes = std::move(probes);
    if (kiln != m_kiln)
        m_undo.clear();
    m_kiln = kiln;
    reload();
}

void ServiceModel::reload() {
    std::vector<ServiceEntry> entries;
    if (m_kiln) {
        auto read = KilnCare(m_notebook.book()).services(*m_kiln);
        if (!read) {
            refuse(QString::fromStdString(read.error().text()));
            return;
        }
        entries = std::move(*read);
        std::ranges::reverse(entries);
    }
    if (std::ranges::equal(entries, m_entries, {}, &ServiceEntry::id, &ServiceEntry::id) &&
        !entries.empty()) {
        m_entries = std::move(entries); // the same in the same order: whoever stands on one stays there
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, serviceColumns - 1));
        return;
    }
    beginResetModel();
    m_entries = std::move(entries);
    endResetModel();
}

std::optional<Instant> ServiceModel::elementsFitted() const {
    const auto found = std::ranges::find(m_entries, ServiceKind::elements, &ServiceEntry::kind);
    return found == m_entries.end() ? std::nullopt : std::optional(found->at);
}

int ServiceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_entries.size()) + (m_kiln ? 1 : 0);
}

int ServiceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : serviceColumns;
}

QString ServiceModel::text(const ServiceEntry& entry, ServiceColumn column, bool typed) const {
    const auto& preferences = m_notebook.preferences();
    switch (column) {
    case ServiceColumn::day:
        return typed ? typedDate(entry.at, preferences) : shortDate(entry.at, preferences);
    case ServiceColumn::kind:
        return serviceWords(entry.kind);
    case ServiceColumn::probe:
        for (const auto& probe : m_probes)
            if (probe.id == entry.probe)
                return QString::fromStdString(probe.label);
        return {};
    case ServiceColumn::words:
        return QString::fromStdString(entry.words);
    }
    return {};
}

QVariant ServiceModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (isNewRow(index.row())) {
        const bool inviting = columnOf(index) == ServiceColumn::day;
        if (inviting && role == Qt::DisplayRole)
            return tr("new entry …");
        return inviting && role == invitingRole ? QVariant(true) : QVariant();
    }
    if (role == Qt::DisplayRole || role == Qt::EditRole || role == Qt::ToolTipRole)
        return text(entry(index.row()), columnOf(index), role == Qt::EditRole);
    return {};
}

QVariant ServiceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::DisplayRole)
        return QStringList{tr("Day"), tr("What"), tr("Probe"), tr("What was done")}.value(section);
    if (role == Qt::ToolTipRole && section == static_cast<int>(ServiceColumn::kind))
        return tr("elements, probe, relay or other; the first letter will do");
    return {};
}

Qt::ItemFlags ServiceModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren | Qt::ItemIsEditable;
}

QString ServiceModel::put(const QString& text, ServiceColumn column, ServiceEntry& entry) const {
    switch (column) {
    case ServiceColumn::day: {
        const auto day = dayTyped(text, m_notebook.preferences());
        if (!day)
            return tr("A day is written as 2026-03-01.");
        entry.at = *day;
        return {};
    }
    case ServiceColumn::kind: {
        const auto kind = kindMeant(text);
        entry.kind = kind.value_or(entry.kind);
        return kind ? QString() : tr("It is done to elements, probe, relay or other.");
    }
    case ServiceColumn::probe: {
        const auto found = std::ranges::find_if(m_probes, [&](const Probe& probe) {
            return QString::fromStdString(probe.label).compare(text, Qt::CaseInsensitive) == 0;
        });
        if (!text.isEmpty() && found == m_probes.end())
            return tr("This kiln has no probe of that name.");
        entry.probe = text.isEmpty() ? std::nullopt : std::optional(found->id);
        return {};
    }
    case ServiceColumn::words:
        entry.words = text.toStdString();
        return {};
    }
    return {};
}

bool ServiceModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole || !m_kiln)
        return false;
    const QString typed = value.toString().trimmed();
    if (isNewRow(index.row())) {
        ServiceEntry fresh;
        fresh.kiln = *m_kiln;
        fresh.at = m_notebook.clock().now();
        const QString wrong = typed.isEmpty() ? QString() : put(typed, columnOf(index), fresh);
        if (typed.isEmpty() || !wrong.isEmpty())
            return typed.isEmpty() ? false : refuse(wrong);
        return push(std::nullopt, fresh, tr("new entry"));
    }
    ServiceEntry changed = entry(index.row());
    if (typed == text(changed, columnOf(index), true))
        return true;
    const QString wrong = put(typed, columnOf(index), changed);
    return wrong.isEmpty() ? push(entry(index.row()), changed, tr("entry")) : refuse(wrong);
}

bool ServiceModel::takeOut(int row) {
    return row >= 0 && !isNewRow(row) && push(entry(row), std::nullopt, tr("entry taken away"));
}

bool ServiceModel::push(std::optional<ServiceEntry> before, std::optional<ServiceEntry> after,
                        const QString& what) {
    m_refused = false;
    m_undo.push(new ServiceChange(*this, std::move(before), std::move(after), what));
    return !m_refused;
}

bool ServiceModel::apply(const std::optional<ServiceEntry>& from, std::optional<ServiceEntry>& to) {
    KilnCare care(m_notebook.book());
    Status done;
    if (!to)
        done = care.remove(from->id);
    else if (from)
        done = care.alter(*to);
    else if (to->id != ServiceId{})
        done = care.restore(*to);
    else if (const auto id = care.add(*to))
        to->id = *id;
    else
        done = id.error();
    if (!done)
        return refuse(QString::fromStdString(done.error().text()));
    reload();
    Q_EMIT written();
    return true;
}

bool ServiceModel::refuse(const QString& why) {
    m_refused = true;
    Q_EMIT troubled(why);
    return false;
}

} // namespace ringhold
