#include "ui/plan/rehearsal_model.h"

#include "ui/plan/plan_rehearsal.h"
#include "ui/session/preferences.h"
#include "ui/spread/strip_words.h"

#include <array>

namespace ringhold {

namespace {

constexpr int rehearsalColumns = 4;

}

RehearsalModel::RehearsalModel(const Preferences& preferences, QObject* parent)
    : QAbstractTableModel(parent), m_preferences(preferences) {}

void RehearsalModel::show(const Plan& plan, std::vector<RehearsedStep> steps) {
    beginResetModel();
    m_plan = plan;
    m_steps = std::move(steps);
    endResetModel();
}

int RehearsalModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_steps.size());
}

int RehearsalModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rehearsalColumns;
}

QString RehearsalModel::text(const RehearsedStep& step, RehearsalColumn column) const {
    switch (column) {
    case RehearsalColumn::step:
        return QString::number(step.step + 1) + QStringLiteral(" · ") +
               stepWords(m_plan.steps[step.step], m_preferences);
    case RehearsalColumn::ends:
        return hoursWords(step.end_h, m_preferences);
    case RehearsalColumn::behind: {
        const auto degrees = [this](std::optional<double> value) {
            return value ? std::optional(m_preferences.shown(TemperatureDifference::fromCelsius(*value)))
                         : std::nullopt;
        };
        const auto& behind = step.behind_C;
        return behind.p95.value_or(0) < 1
                   ? QStringLiteral("–")
                   : rangeWords({degrees(behind.p05), degrees(behind.median), degrees(behind.p95)});
    }
    case RehearsalColumn::energy:
        return rangeWords(step.energy_kWh, step.energy_kWh.median.value_or(0) < 10 ? 1 : 0);
    }
    return {};
}

QVariant RehearsalModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignLeft | Qt::AlignVCenter);
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole)
        return {};
    return text(m_steps[static_cast<std::size_t>(index.row())], static_cast<RehearsalColumn>(index.column()));
}

QVariant RehearsalModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= rehearsalColumns)
        return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignLeft | Qt::AlignVCenter);
    if (role != Qt::DisplayRole)
        return {};
    const std::array heads{tr("step"), tr("ends after lighting"),
                           tr("behind, %1").arg(m_preferences.unitName()), tr("kWh")};
    return heads[static_cast<std::size_t>(section)];
}

} // namespace ringhold
