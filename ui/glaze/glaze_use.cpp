#include "ui/glaze/glaze_use.h"

#include "core/glaze/glaze_card.h"
#include "ui/common/dates.h"
#include "ui/common/firing_words.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

bool names(const Piece& piece, const QString& glaze) {
    return std::ranges::any_of(glazeNames(piece.glaze), [&](const std::string& name) {
        return QString::fromStdString(name).compare(glaze, Qt::CaseInsensitive) == 0;
    });
}

QString largestOf(const std::vector<Outcome>& outcomes) {
    double largest = 0;
    for (const auto& outcome : outcomes)
        largest = std::max(largest, outcome.largest_mm.value_or(0));
    return largest > 0 ? GlazeUseModel::tr("%1 mm").arg(largest, 0, 'g', 4) : QString();
}

QString gradesOf(const std::vector<Outcome>& outcomes) {
    QStringList grades;
    for (const auto& outcome : outcomes)
        grades << QString::fromStdString(outcome.grade);
    grades.removeAll(QString());
    grades.sort(Qt::CaseInsensitive);
    return grades.join(QStringLiteral(", "));
}

} // namespace

Result<std::vector<GlazeFiring>> glazeFirings(const BookReader& reader, const std::string& glaze) {
    FiringFilter filter;
    filter.glaze = glaze;
    const auto summaries = reader.firings(filter);
    if (!summaries)
        return summaries.error();
    const QString name = QString::fromStdString(glaze);
    std::vector<GlazeFiring> used;
    for (const auto& summary : *summaries) {
        auto pieces = reader.pieces(summary.id);
        auto outcomes = reader.outcomes(summary.id);
        if (!pieces || !outcomes)
            return pieces ? outcomes.error() : pieces.error();
        std::erase_if(*pieces, [&](const Piece& piece) { return !names(piece, name); });
        std::erase_if(*outcomes, [&](const Outcome& outcome) {
            return std::ranges::find(*pieces, outcome.piece, &Piece::id) == pieces->end();
        });
        if (!pieces->empty())
            used.push_back({summary, std::move(*pieces), std::move(*outcomes)});
    }
    std::ranges::reverse(used);
    return used;
}

void GlazeUseModel::show(std::vector<GlazeFiring> firings) {
    beginResetModel();
    m_firings = std::move(firings);
    endResetModel();
}

int GlazeUseModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_firings.size());
}

int GlazeUseModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : glazeUseColumns;
}

QString GlazeUseModel::text(const GlazeFiring& used, GlazeUseColumn column) const {
    switch (column) {
    case GlazeUseColumn::began:
        return shortDate(used.firing.began, m_preferences);
    case GlazeUseColumn::firing:
        return firingTitle(used.firing);
    case GlazeUseColumn::kiln:
        return QString::fromStdString(used.firing.kilnName);
    case GlazeUseColumn::peak:
        return used.firing.peak ? m_preferences.temperature(*used.firing.peak) : QString();
    case GlazeUseColumn::pieces:
        return QString::number(used.pieces.size());
    case GlazeUseColumn::largest:
        return largestOf(used.outcomes);
    case GlazeUseColumn::grades:
        return gradesOf(used.outcomes);
    }
    return {};
}

QVariant GlazeUseModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = static_cast<GlazeUseColumn>(index.column());
    if (role == Qt::TextAlignmentRole)
        return int((column == GlazeUseColumn::pieces || column == GlazeUseColumn::largest ||
                            column == GlazeUseColumn::peak
                        ? Qt::AlignRight
                        : Qt::AlignLeft) |
                   Qt::AlignVCenter);
    return role == Qt::DisplayRole ? QVariant(text(firing(index.row()), column)) : QVariant();
}

QVariant GlazeUseModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 || section >= glazeUseColumns)
        return {};
    const std::array headings{tr("lit"),    tr("firing"),  tr("kiln"),  tr("probe’s peak"),
                              tr("pieces"), tr("largest"), tr("grades")};
    return headings[static_cast<std::size_t>(section)];
}

} // namespace ringhold
