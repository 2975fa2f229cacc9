#include "ui/glaze/recipe_model.h"

#include "core/glaze/formula.h"
#include "ui/common/cell_delegate.h"

#include <array>

namespace ringhold {

namespace {

RecipeColumn columnOf(const QModelIndex& index) {
    return static_cast<RecipeColumn>(index.column());
}

struct Material {
    const char* name;
    const char* formula;
};

/// Theoretical formulas, as text books of chemistry give them.
constexpr std::array materials{
    Material{QT_TRANSLATE_NOOP("RecipeModel", "zinc oxide"), "ZnO"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "silica"), "SiO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "quartz"), "SiO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "kaolin"), "Al2Si2O5(OH)4"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "alumina"), "Al2O3"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "titanium dioxide"), "TiO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "potash feldspar"), "K2O·Al2O3·6SiO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "soda feldspar"), "Na2O·Al2O3·6SiO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "whiting"), "CaCO3"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "dolomite"), "CaMg(CO3)2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "lithium carbonate"), "Li2CO3"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "cobalt carbonate"), "CoCO3"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "copper carbonate"), "Cu2CO3(OH)2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "nickel oxide"), "NiO"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "manganese dioxide"), "MnO2"},
    Material{QT_TRANSLATE_NOOP("RecipeModel", "red iron oxide"), "Fe2O3"}};

bool isFigureColumn(RecipeColumn column) {
    return column == RecipeColumn::percent || column == RecipeColumn::batch;
}

} // namespace

QString formulaOf(const QString& material) {
    for (const auto& known : materials)
        if (RecipeModel::tr(known.name).compare(material.trimmed(), Qt::CaseInsensitive) == 0)
            return QString::fromUtf8(known.formula);
    return {};
}

QStringList knownMaterials() {
    QStringList names;
    for (const auto& known : materials)
        names << RecipeModel::tr(known.name);
    return names;
}

void RecipeModel::show(std::vector<RecipeLine> lines) {
    if (lines == m_lines)
        return;
    beginResetModel();
    m_lines = std::move(lines);
    endResetModel();
}

void RecipeModel::setBatch(double grams) {
    m_batch_g = grams;
    if (!m_lines.empty())
        Q_EMIT dataChanged(index(0, int(RecipeColumn::batch)),
                           index(static_cast<int>(m_lines.size()) - 1, int(RecipeColumn::batch)));
}

void RecipeModel::removeLine(int row) {
    if (row < 0 || isNewRow(row))
        return;
    auto lines = m_lines;
    lines.erase(lines.begin() + row);
    Q_EMIT edited(lines);
}

int RecipeModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size()) + 1;
}

int RecipeModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : recipeColumns;
}

QString RecipeModel::text(const RecipeLine& line, RecipeColumn column) const {
    switch (column) {
    case RecipeColumn::material:
        return QString::fromStdString(line.material);
    case RecipeColumn::percent:
        return QString::number(line.percent, 'g', 6);
    case RecipeColumn::formula:
        return QString::fromStdString(line.formula);
    case RecipeColumn::batch:
        return tr("%1 g").arg(line.percent / 100 * m_batch_g, 0, 'f', line.percent < 5 ? 1 : 0);
    case RecipeColumn::addition:
        break;
    }
    return {};
}

QVariant RecipeModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = columnOf(index);
    if (role == Qt::TextAlignmentRole)
        return int((isFigureColumn(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (isNewRow(index.row())) {
        const bool inviting = column == RecipeColumn::material;
        if (inviting && role == Qt::DisplayRole)
            return tr("new material …");
        return inviting && role == invitingRole ? QVariant(true) : QVariant();
    }
    const auto& line = m_lines[static_cast<std::size_t>(index.row())];
    if (role == Qt::CheckStateRole && column == RecipeColumn::addition)
        return int(line.addition ? Qt::Checked : Qt::Unchecked);
    if (role == Qt::DisplayRole || role == Qt::EditRole)
        return text(line, column);
    return {};
}

QVariant RecipeModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= recipeColumns)
        return {};
    const auto column = static_cast<RecipeColumn>(section);
    if (role == Qt::TextAlignmentRole)
        return int((isFigureColumn(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole && column == RecipeColumn::addition)
        return tr("On top of the hundred, as colourants are");
    if (role == Qt::ToolTipRole && column == RecipeColumn::formula)
        return tr("As ZnO or Al2Si2O5(OH)4: moles are reckoned from it");
    if (role != Qt::DisplayRole)
        return {};
    const std::array headings{tr("material"), tr("percent"), tr("on top"), tr("formula"), tr("weigh out")};
    return headings[static_cast<std::size_t>(section)];
}

Qt::ItemFlags RecipeModel::flags(const QModelIndex& index) const {
    const auto flags = QAbstractTableModel::flags(index);
    if (!index.isValid())
        return flags;
    if (isNewRow(index.row()))
        return columnOf(index) == RecipeColumn::material ? flags | Qt::ItemIsEditable : flags;
    if (columnOf(index) == RecipeColumn::batch)
        return flags;
    return flags | (columnOf(index) == RecipeColumn::addition ? Qt::ItemIsUserCheckable : Qt::ItemIsEditable);
}

QString RecipeModel::put(const QVariant& value, RecipeColumn column, RecipeLine& line) const {
    QString text = value.toString().trimmed();
    switch (column) {
    case RecipeColumn::material:
        if (text.isEmpty())
            return tr("A material has a name.");
        if (line.formula.empty() ||
            QString::fromStdString(line.formula) == formulaOf(QString::fromStdString(line.material)))
            line.formula = formulaOf(text).toStdString();
        line.material = text.toStdString();
        return {};
    case RecipeColumn::percent: {
        bool isNumber = false;
        const double percent = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
        if (!isNumber || !(percent >= 0 && percent <= 10000))
            return tr("Percent is a number, 0 or above.");
        line.percent = percent;
        return {};
    }
    case RecipeColumn::formula:
        if (const auto read = materialFromFormula(text.toStdString()); !text.isEmpty() && !read)
            return tr("This formula cannot be read: %1").arg(QString::fromStdString(read.error().text()));
        line.formula = text.toStdString();
        return {};
    case RecipeColumn::addition:
        line.addition = value.toBool();
        return {};
    case RecipeColumn::batch:
        break;
    }
    return {};
}

bool RecipeModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || !(flags(index) & (Qt::ItemIsEditable | Qt::ItemIsUserCheckable)))
        return false;
    auto lines = m_lines;
    if (isNewRow(index.row())) {
        if (value.toString().trimmed().isEmpty())
            return false;
        lines.emplace_back();
    }
    const QString wrong = put(role == Qt::CheckStateRole ? value.toInt() == Qt::Checked : value,
                              columnOf(index), lines[static_cast<std::size_t>(index.row())]);
    if (!wrong.isEmpty()) {
        Q_EMIT troubled(wrong);
        return false;
    }
    const bool added = lines.size() > m_lines.size();
    if (added)
        beginInsertRows({}, index.row(), index.row());
    m_lines = lines;
    if (added)
        endInsertRows();
    else
        Q_EMIT dataChanged(index.siblingAtColumn(0), index.siblingAtColumn(recipeColumns - 1));
    Q_EMIT edited(lines);
    return true;
}

} // namespace ringhold
