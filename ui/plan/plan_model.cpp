#include "ui/plan/plan_model.h"

#include "core/learn/firing_figures.h"
#include "core/report/model_words.h"
#include "ui/common/word_style.h"
#include "ui/plan/step_heads.h"
#include "ui/session/preferences.h"

#include <QUndoCommand>

#include <algorithm>

namespace ringhold {

namespace {

class PlanCommand : public QUndoCommand {
  public:
    PlanCommand(const QString& what, std::function<void()> redo, std::function<void()> undo)
        : QUndoCommand(what), m_redo(std::move(redo)), m_undo(std::move(undo)) {}

    void redo() override { m_redo(); }
    void undo() override { m_undo(); }

  private:
    std::function<void()> m_redo;
    std::function<void()> m_undo;
};

StepColumn columnAt(const QModelIndex& index) {
    return static_cast<StepColumn>(index.column());
}

} // namespace

PlanModel::PlanModel(const Preferences& preferences, QObject* parent)
    : QAbstractTableModel(parent), m_preferences(preferences) {
    connect(&preferences, &Preferences::changed, this, &PlanModel::showAnew);
    m_faults = toldFaults(m_plan, m_cones, m_preferences);
}

void PlanModel::setPlan(const Plan& plan) {
    beginResetModel();
    m_plan = plan;
    m_durations.clear();
    m_faults = toldFaults(m_plan, m_cones, m_preferences);
    m_undo.clear();
    endResetModel();
    Q_EMIT planChanged();
}

void PlanModel::setConeType(ConeType type) {
    m_cones = type;
    showAnew();
}

void PlanModel::setDurations(std::vector<Duration> durations) {
    m_durations = std::move(durations);
    if (rowCount() > 0) {
        const int column = static_cast<int>(StepColumn::takes);
        Q_EMIT dataChanged(index(0, column), index(rowCount() - 1, column));
    }
}

bool PlanModel::isSound() const {
    return std::ranges::none_of(m_faults, &ToldFault::barsReckoning);
}

void PlanModel::doThis(const QString& what, std::function<void()> redo, std::function<void()> undo) {
    m_undo.push(new PlanCommand(what, std::move(redo), std::move(undo)));
}

void PlanModel::addStep(StepKind kind, int row) {
    row = std::clamp(row, 0, rowCount());
    const Step step = usualStep(kind, endOf(m_plan, static_cast<std::size_t>(row)));
    doThis(
        tr("add %1").arg(kindWords(kind)), [=, this] { insertStep(row, step); },
        [=, this] { eraseStep(row); });
}

void PlanModel::removeStep(int row) {
    if (!isRow(row))
        return;
    const Step step = stepAt(row);
    doThis(
        tr("remove %1").arg(kindWords(kindOf(step))), [=, this] { eraseStep(row); },
        [=, this] { insertStep(row, step); });
}

void PlanModel::moveStep(int from, int to) {
    if (!isRow(from) || !isRow(to) || from == to)
        return;
    doThis(
        tr("move %1").arg(kindWords(kindOf(stepAt(from)))), [=, this] { shiftStep(from, to); },
        [=, this] { shiftStep(to, from); });
}

void PlanModel::setKind(int row, StepKind kind) {
    if (!isRow(row) || kindOf(stepAt(row)) == kind)
        return;
    const Step before = stepAt(row);
    const Step after = converted(before, kind, endOf(m_plan, static_cast<std::size_t>(row)));
    doThis(
        tr("make it a %1").arg(kindWords(kind)), [=, this] { putStep(row, after); },
        [=, this] { putStep(row, before); });
}

void PlanModel::rename(const QString& name) {
    const std::string before = m_plan.name;
    const std::string after = name.trimmed().toStdString();
    if (after.empty() || after == before)
        return;
    const auto put = [this](const std::string& text) {
        m_plan.name = text;
        Q_EMIT planChanged();
    };
    doThis(
        tr("rename"), [=] { put(after); }, [=] { put(before); });
}

void PlanModel::holdGrowthWithin(TemperatureDifference halfWidth) {
    const auto found = growthHoldStep(m_plan);
    if (!found)
        return;
    const int row = static_cast<int>(*found);
    const Step before = stepAt(row);
    Step after = before;
    std::get<Hold>(after).band = halfWidth;
    if (std::get<Hold>(before).band != halfWidth)
        doThis(
            tr("change band"), [=, this] { putStep(row, after); }, [=, this] { putStep(row, before); });
}

void PlanModel::putStep(int row, const Step& step) {
    stepAt(row) = step;
    changed();
}

void PlanModel::insertStep(int row, const Step& step) {
    beginInsertRows({}, row, row);
    m_plan.steps.insert(m_plan.steps.begin() + row, step);
    endInsertRows();
    changed();
}

void PlanModel::eraseStep(int row) {
    beginRemoveRows({}, row, row);
    m_plan.steps.erase(m_plan.steps.begin() + row);
    endRemoveRows();
    changed();
}

void PlanModel::shiftStep(int from, int to) {
    beginMoveRows({}, from, from, {}, to > from ? to + 1 : to);
    const Step step = stepAt(from);
    m_plan.steps.erase(m_plan.steps.begin() + from);
    m_plan.steps.insert(m_plan.steps.begin() + to, step);
    endMoveRows();
    changed();
}

void PlanModel::changed() {
    m_durations.clear();
    showAnew();
    Q_EMIT planChanged();
}

void PlanModel::showAnew() {
    m_faults = toldFaults(m_plan, m_cones, m_preferences);
    if (rowCount() > 0)
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

int PlanModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_plan.steps.size());
}

int PlanModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : stepColumns;
}

QString PlanModel::cellText(const QModelIndex& index, int role) const {
    Step step = stepAt(index.row());
    if (const auto cell = cellOf(step, columnAt(index)))
        return role == Qt::EditRole ? offeredIn(*cell, m_preferences) : shownIn(*cell, m_preferences);
    if (columnAt(index) == StepColumn::kind)
        return kindWords(kindOf(step));
    const auto row = static_cast<std::size_t>(index.row());
    return columnAt(index) == StepColumn::takes && row < m_durations.size()
               ? m_preferences.span(m_durations[row])
               : QString();
}

QString PlanModel::faultAt(const QModelIndex& index) const {
    const Step& step = stepAt(index.row());
    for (const auto& fault : m_faults)
        if (fault.step == static_cast<std::size_t>(index.row()) &&
            columnOf(step, fault.key) == columnAt(index))
            return fault.words;
    return {};
}

/// How well the model fits the cone that the cell names.
QString PlanModel::modelFitAt(const QModelIndex& index) const {
    const auto* wait = std::get_if<ConeWait>(&stepAt(index.row()));
    const auto* cone = wait ? ConeTable::builtIn().find(wait->cone, m_cones) : nullptr;
    if (!cone || columnAt(index) != StepColumn::which)
        return {};
    QString words = QString::fromStdString(modelFitWords(*cone, styleOf(m_preferences)));
    words[0] = words[0].toUpper();
    return words;
}

/// The whole cell in words, for who does not see the table.
QString PlanModel::told(const QModelIndex& index) const {
    Step step = stepAt(index.row());
    const auto cell = cellOf(step, columnAt(index));
    QString words = cellText(index, Qt::DisplayRole);
    if (cell)
        words = QString::fromUtf8(cell->words) + QLatin1Char(' ') + toldIn(*cell, m_preferences);
    else if (columnAt(index) == StepColumn::takes && !words.isEmpty())
        words = tr("takes ") + words;
    const QString fault = faultAt(index);
    return fault.isEmpty() ? words : words + tr("; wrong: ") + fault;
}

QVariant PlanModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid())
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return cellText(index, role);
    case Qt::EditRole:
        if (columnAt(index) == StepColumn::kind)
            return static_cast<int>(kindOf(stepAt(index.row())));
        return cellText(index, role);
    case Qt::AccessibleTextRole:
        return told(index);
    case Qt::ToolTipRole: {
        const QString fault = faultAt(index);
        return fault.isEmpty() ? modelFitAt(index) : fault;
    }
    case FaultRole:
        return faultAt(index);
    case ReckonedRole:
        return columnAt(index) == StepColumn::takes;
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(alignmentOf(columnAt(index)));
    default:
        return {};
    }
}

QVariant PlanModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    const auto column = static_cast<StepColumn>(section);
    if (role == Qt::DisplayRole)
        return headOf(column, m_preferences.unitName());
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole)
        return headInWords(column);
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(alignmentOf(column));
    return {};
}

Qt::ItemFlags PlanModel::flags(const QModelIndex& index) const {
    auto flags = QAbstractTableModel::flags(index);
    if (!index.isValid())
        return flags;
    Step step = stepAt(index.row());
    const bool hasValue = columnAt(index) == StepColumn::kind || cellOf(step, columnAt(index));
    return hasValue ? flags | Qt::ItemIsEditable : flags;
}

bool PlanModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole)
        return false;
    const int row = index.row();
    if (columnAt(index) == StepColumn::kind) {
        const int kind = value.toInt();
        if (kind < 0 || kind >= stepKinds)
            return false;
        setKind(row, static_cast<StepKind>(kind));
        return true;
    }
    const Step before = stepAt(row);
    Step after = before;
    const auto cell = cellOf(after, columnAt(index));
    if (!cell)
        return false;
    const auto typing = typeInto(*cell, value.toString(), m_preferences);
    const QString words = QString::fromUtf8(cell->words);
    if (typing == Typing::notUnderstood) // it left the value as it was
        Q_EMIT refused(tr("Step %1, %2: “%3” is not understood. It stays %4.")
                           .arg(row + 1)
                           .arg(words, value.toString(), toldIn(*cell, m_preferences)));
    if (typing == Typing::changed)
        doThis(
            tr("change %1").arg(words), [=, this] { putStep(row, after); },
            [=, this] { putStep(row, before); });
    return typing != Typing::notUnderstood;
}

} // namespace ringhold
