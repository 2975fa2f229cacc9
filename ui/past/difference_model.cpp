#include "ui/past/difference_model.h"

#include "ui/common/dates.h"
#include "ui/common/firing_words.h"
#include "ui/session/preferences.h"

#include <QIcon>
#include <QPainter>
#include <QPixmap>

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
    beginResetModel();
    m_laid = std::move(laid);
    m_pens = std::move(pens);
    endResetModel();
}

int DifferenceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_laid.size());
}

int DifferenceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : differenceColumns;
}

QString DifferenceModel::probeText(const LaidFiring& laid) const {
    const auto& probe = laid.firing->probe;
    const QString name = probe ? QString::fromStdString(probe->label) : tr("not named");
    return laid.comparable ? name : name + (probe ? tr(", another") : QString());
}

QString DifferenceModel::holdText(const HoldStatistics& hold, DifferenceColumn column) const {
    switch (column) {
    case DifferenceColumn::holdMean:
        return m_preferences.temperature(hold.mean, 1);
    case DifferenceColumn::holdSd:
        return m_preferences.difference(hold.sd, 1, false);
    default:
        return m_preferences.span(hold.end - hold.start);
    }
}

QString DifferenceModel::text(std::size_t row, DifferenceColumn column) const {
    const auto& laid = m_laid[row];
    const auto& firing = laid.firing->record.firing;
    const auto& figures = laid.firing->figures;
    switch (column) {
    case DifferenceColumn::key:
        return layName(row);
    case DifferenceColumn::firing:
        return firingTitle(firing) + QStringLiteral(", ") + shortDate(firing.began, m_preferences);
    case DifferenceColumn::probe:
        return probeText(laid);
    case DifferenceColumn::peak:
        return figures.peak ? m_preferences.temperature(figures.peak->temperature) : unknown();
    case DifferenceColumn::nearPeak:
        return figures.peak ? m_preferences.span(figures.nearPeak) : unknown();
    case DifferenceColumn::lastClimb:
        return figures.lastClimb ? m_preferences.rate(*figures.lastClimb) : unknown();
    case DifferenceColumn::coneDown:
        return figures.coneDown ? tr("%1 at %2")
                                      .arg(QString::fromStdString(figures.firingCone),
                                           m_preferences.span(*figures.coneDown - firing.began))
                                : unknown();
    case DifferenceColumn::holdMean:
    case DifferenceColumn::holdSd:
    case DifferenceColumn::holdLength:
        return figures.growthHold ? holdText(*figures.growthHold, column) : unknown();
    }
    return {};
}

QVariant DifferenceModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto row = static_cast<std::size_t>(index.row());
    const auto column = static_cast<DifferenceColumn>(index.column());
    if (role == Qt::DecorationRole && column == DifferenceColumn::key)
        return sampleOf(m_pens[row]);
    return role == Qt::DisplayRole || role == Qt::ToolTipRole ? QVariant(text(row, column)) : QVariant();
}

QVariant DifferenceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    const QString ten = m_preferences.difference(TemperatureDifference::fromCelsius(10), 0, false);
    const QString hundred = m_preferences.difference(TemperatureDifference::fromCelsius(100), 0, false);
    if (role == Qt::DisplayRole)
        return QStringList{QString(),        tr("Firing"),     tr("Probe"),     tr("Peak"),
                           tr("At the top"), tr("Last climb"), tr("Cone down"), tr("Hold mean"),
                           tr("Hold sd"),    tr("Hold time")}
            .value(section);
    if (role == Qt::ToolTipRole)
        return QStringList{QString(),
                           QString(),
                           tr("The control probe"),
                           tr("The hottest reading of the control probe"),
                           tr("Time within %1 of the peak").arg(ten),
                           tr("Over the last %1 before the peak, the last %2 left out").arg(hundred, ten),
                           tr("When a look found the firing cone down, after the start"),
                           tr("Mean of the growth hold"),
                           tr("Standard deviation of the growth hold"),
                           tr("Length of the growth hold")}
            .value(section);
    return {};
}

} // namespace ringhold
