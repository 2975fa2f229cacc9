#include "ui/ware/checklist_model.h"

#include "core/book/kiln_care.h"
#include "core/report/report_words.h"
#include "ui/common/cell_delegate.h"
#include "ui/common/word_style.h"
#include "ui/session/notebook.h"

#include <QUndoStack>

#include <algorithm>

namespace ringhold {

/// The own lines as they were and as they are to be.
class ChecklistChange : public QUndoCommand {
  public:
    ChecklistChange(ChecklistModel& model, std::vector<ChecklistItem> before,
                    std::vector<ChecklistItem> after, const QString& what)
        : QUndoCommand(what), m_model(model), m_before(std::move(before)), m_after(std::move(after)) {}
    void redo() override { setObsolete(!m_model.write(m_after)); }
    void undo() override { setObsolete(!m_model.write(m_before)); }

  private:
    ChecklistModel& m_model;
    std::vector<ChecklistItem> m_before;
    std::vector<ChecklistItem> m_after;
};

namespace {

constexpr const char* eventKind = "checklist";

QStringList cautionsFor(bool flame, const WordStyle& style) {
    std::vector<Caution> cautions{Caution::licensedTrades, Caution::fumes};
    if (flame)
        cautions.push_back(Caution::carbonMonoxide);
    cautions.push_back(Caution::spyhole);
    cautions.push_back(Caution::hotWare);
    QStringList words;
    for (const auto caution : cautions)
        words << QString::fromStdString(cautionWords(caution, style));
    return words;
}

} // namespace

ChecklistModel::ChecklistModel(Notebook& notebook, QUndoStack& undo, QObject* parent)
    : QAbstractListModel(parent), m_notebook(notebook),
      m_cautions(cautionsFor(false, styleOf(notebook.preferences()))), m_undo(undo) {}

void ChecklistModel::reload() {
    auto items = KilnCare(m_notebook.book()).checklist();
    if (!items) {
        refuse(items.error());
        return;
    }
    readGoneThrough();
    std::erase_if(*items, [](const ChecklistItem& item) { return item.kind == ChecklistKind::caution; });
    if (*items == m_own)
        return;
    beginResetModel();
    m_own = std::move(*items);
    endResetModel();
    Q_EMIT tickedChanged();
}

void ChecklistModel::showFor(FiringId firing, bool flame) {
    const QStringList cautions = cautionsFor(flame, styleOf(m_notebook.preferences()));
    if (firing == m_firing && cautions == m_cautions)
        return;
    beginResetModel();
    m_firing = firing;
    m_cautions = cautions;
    m_ticked.clear();
    endResetModel();
    readGoneThrough();
    Q_EMIT tickedChanged();
}

int ChecklistModel::tickedCount() const {
    int ticked = 0;
    for (int row = 0; row < lineCount(); ++row)
        ticked += m_ticked.contains(text(row));
    return ticked;
}

void ChecklistModel::readGoneThrough() {
    m_goneThrough.reset();
    if (const auto events = m_notebook.reader().events(m_firing))
        for (const auto& event : *events)
            if (event.kind == eventKind)
                m_goneThrough = event.at;
}

void ChecklistModel::tellLog() {
    if (m_goneThrough || m_firing == FiringId{} || tickedCount() < lineCount())
        return;
    const Instant now = m_notebook.clock().now();
    const LogEvent event{m_firing, now, eventKind,
                         tr("all %1 lines gone through").arg(lineCount()).toStdString()};
    if (const auto done = m_notebook.writer().add(event); !done) {
        refuse(done.error());
        return;
    }
    m_goneThrough = now;
    Q_EMIT written();
}

QString ChecklistModel::text(int row) const {
    if (isCaution(row))
        return m_cautions[row];
    if (isNewRow(row))
        return {};
    return QString::fromStdString(m_own[static_cast<std::size_t>(row - m_cautions.size())].words);
}

int ChecklistModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_cautions.size()) + static_cast<int>(m_own.size()) + 1;
}

QVariant ChecklistModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const int row = index.row();
    if (isNewRow(row))
        return role == Qt::DisplayRole ? QVariant(tr("a line of your own …"))
               : role == invitingRole  ? QVariant(true)
                                       : QVariant();
    if (role == Qt::DisplayRole || role == Qt::EditRole || role == Qt::ToolTipRole)
        return text(row);
    if (role == Qt::CheckStateRole)
        return int(m_ticked.contains(text(row)) ? Qt::Checked : Qt::Unchecked);
    return {};
}

Qt::ItemFlags ChecklistModel::flags(const QModelIndex& index) const {
    auto flags = QAbstractListModel::flags(index);
    if (!index.isValid())
        return flags;
    if (!isNewRow(index.row()))
        flags |= Qt::ItemIsUserCheckable;
    return isCaution(index.row()) ? flags : flags | Qt::ItemIsEditable;
}

bool ChecklistModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid())
        return false;
    const int row = index.row();
    if (role == Qt::CheckStateRole && !isNewRow(row)) {
        if (value.toInt() == Qt::Checked)
            m_ticked.insert(text(row));
        else
            m_ticked.erase(text(row));
        tellLog();
        Q_EMIT dataChanged(index, index, {Qt::CheckStateRole});
        Q_EMIT tickedChanged();
        return true;
    }
    const std::string words = value.toString().trimmed().toStdString();
    if (role != Qt::EditRole || isCaution(row) || words.empty())
        return false;
    auto items = m_own;
    if (isNewRow(row))
        items.emplace_back();
    items[static_cast<std::size_t>(row - m_cautions.size())].words = words;
    return change(std::move(items), tr("line of the checklist"));
}

bool ChecklistModel::remove(int row) {
    if (row < 0 || isCaution(row) || isNewRow(row))
        return false;
    auto items = m_own;
    items.erase(items.begin() + (row - m_cautions.size()));
    return change(std::move(items), tr("line of the checklist taken out"));
}

bool ChecklistModel::change(std::vector<ChecklistItem> items, const QString& what) {
    m_refused = false;
    m_undo.push(new ChecklistChange(*this, m_own, std::move(items), what));
    return !m_refused;
}

bool ChecklistModel::refuse(const Error& why) {
    m_refused = true;
    Q_EMIT troubled(QString::fromStdString(why.text()));
    return false;
}

bool ChecklistModel::write(const std::vector<ChecklistItem>& items) {
    if (const auto done = KilnCare(m_notebook.book()).setChecklist(items); !done)
        return refuse(done.error());
    reload();
    Q_EMIT written();
    return !m_refused;
}

} // namespace ringhold
