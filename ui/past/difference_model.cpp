#include "ui/past/difference_model.h"

#include "ui/common/dates.h"
#include "ui/common/firing_words.h"
#include "ui/past/difference_words.h"
#include "ui/session/preferences.h"

#include <QFont>
#include <QIcon>
#include <QPainter>
#include <QPixmap>

#include <algorithm>

namespace ringhold {

namespace {

QIcon sampleOf(const QPen& pen) {
    constexpr int scale = 2; // crisp on fine screens
    QPixmap pixmap(26 * scale, 12 * scale);
    pixmap.setDevicePixelRatio(scale);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setPen(pen);
    painter.drawLine(QPointF(0, 6), QPointF(26, 6));
    return QIcon(pixmap);
}

const QString& unknown() {
    static const QString dash = QStringLiteral("–");
    return dash;
}

} // namespace

void DifferenceModel::show(std::vector<LaidFiring> laid, std::vector<QPen> pens) {
    std::vector<ComparedFiring> compared;
    for (const auto& next : laid) {
        const auto& firing = *next.firing;
        ComparedFiring with{&firing.record, firing.control, firing.offset, std::nullopt};
        with.figures = &firing.figures;
        with.energy = firing.use.electricity;
        compared.push_back(std::move(with));
    }
    beginResetModel();
    m_comparison = compare(compared);
    m_laid = std::move(laid);
    m_pens = std::move(pens);
    endResetModel();
}

std::optional<int> DifferenceModel::rowOf(Figure figure) const {
    const auto found = std::ranges::find(m_comparison.rows, figure, &FigureRow::figure);
    return found == m_comparison.rows.end()
               ? std::nullopt
               : std::optional(namingRows + static_cast<int>(found - m_comparison.rows.begin()));
}

const FigureRow* DifferenceModel::figures(int row) const {
    const int at = row - namingRows;
    return at >= 0 && at < static_cast<int>(m_comparison.rows.size())
               ? &m_comparison.rows[static_cast<std::size_t>(at)]
               : nullptr;
}

int DifferenceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || m_laid.empty() ? 0
                                              : namingRows + static_cast<int>(m_comparison.rows.size()) + 1;
}

int DifferenceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_laid.size());
}

QString DifferenceModel::grades(const LaidFiring& laid) const {
    QStringList grades;
    for (const auto& outcome : laid.firing->record.outcomes)
        grades << QString::fromStdString(outcome.grade);
    grades.removeAll(QString());
    grades.sort(Qt::CaseInsensitive);
    return grades.isEmpty() ? unknown() : grades.join(QStringLiteral(", "));
}

QString DifferenceModel::text(int row, const LaidFiring& laid, std::size_t column) const {
    const auto& firing = laid.firing->record.firing;
    const auto& probe = laid.firing->probe;
    if (row == firingRow)
        return firingTitle(firing) + QStringLiteral(", ") + shortDate(firing.began, m_preferences);
    if (row == probeRow)
        return probe ? QString::fromStdString(probe->label) : tr("not named");
    const FigureRow* figure = figures(row);
    if (!figure)
        return grades(laid);
    const auto& value = figure->values[column];
    return value ? figureText(figure->figure, *value, m_preferences) : unknown();
}

QVariant DifferenceModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = static_cast<std::size_t>(index.column());
    return role == Qt::DisplayRole || role == Qt::ToolTipRole
               ? QVariant(text(index.row(), m_laid[column], column))
               : QVariant();
}

QVariant DifferenceModel::figureHead(int row, int role) const {
    const FigureRow* figure = figures(row);
    if (role == Qt::DisplayRole)
        return figure ? figureName(figure->figure) + (figure->comparable ? QString() : QStringLiteral(" *"))
               : row == firingRow ? tr("Firing")
               : row == probeRow  ? tr("Control probe")
                                  : tr("Grades");
    if (role == Qt::ToolTipRole && figure)
        return figureMeaning(figure->figure, m_preferences);
    if (role == Qt::FontRole && figure && figure->matters && figure->comparable) {
        QFont heavy;
        heavy.setBold(true);
        return heavy;
    }
    return {};
}

QVariant DifferenceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (section < 0 || section >= (orientation == Qt::Vertical ? rowCount() : columnCount()))
        return {};
    if (orientation == Qt::Vertical)
        return figureHead(section, role);
    const auto column = static_cast<std::size_t>(section);
    if (role == Qt::DisplayRole)
        return layName(column);
    if (role == Qt::DecorationRole)
        return sampleOf(m_pens[column]);
    return role == Qt::ToolTipRole ? QVariant(text(firingRow, m_laid[column], column)) : QVariant();
}

} // namespace ringhold
