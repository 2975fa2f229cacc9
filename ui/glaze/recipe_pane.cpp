#include "ui/glaze/recipe_pane.h"

#include "ui/common/cell_delegate.h"
#include "ui/common/entry_table.h"
#include "ui/common/list_completer.h"
#include "ui/common/words_on_page.h"
#include "ui/glaze/recipe_words.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

namespace {

/// Materials are completed as they are typed.
class RecipeDelegate : public CellDelegate {
  public:
    using CellDelegate::CellDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&,
                          const QModelIndex& index) const override {
        auto* line = new QLineEdit(parent);
        line->setFrame(false);
        line->setAccessibleName(
            index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
        if (static_cast<RecipeColumn>(index.column()) == RecipeColumn::material)
            line->setCompleter(new ListCompleter(knownMaterials(), {}, line));
        return line;
    }
};

constexpr double mostGrams = 1e6;

} // namespace

RecipePane::RecipePane(QWidget* parent)
    : QWidget(parent), m_model(new RecipeModel(this)), m_table(new EntryTable), m_figures(new QLabel),
      m_warnings(new Remark(Remark::Kind::warning)), m_trouble(new Remark(Remark::Kind::warning)),
      m_batch(new QLineEdit(QStringLiteral("1000"))), m_remove(new QPushButton(tr("Take the line &out"))) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    m_table->setItemDelegate(new RecipeDelegate(m_table));
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Recipe"));
    m_table->setColumns({{16, 2}, {9, 0}, {8, 0}, {14, 2}, {11, 0}});
    column->addWidget(m_table, 1);
    m_figures->setWordWrap(true);
    column->addWidget(m_figures);
    column->addWidget(m_warnings);
    column->addWidget(m_trouble);
    column->addLayout(makeFoot());
    connect(m_model, &RecipeModel::edited, this, [this](const std::vector<RecipeLine>& lines) {
        m_trouble->say({});
        Q_EMIT edited(lines);
        tell();
    });
    connect(m_model, &RecipeModel::troubled, m_trouble, &Remark::say);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, &RecipePane::tell);
    connect(m_batch, &QLineEdit::editingFinished, this, &RecipePane::takeBatch);
}

QLayout* RecipePane::makeFoot() {
    auto* foot = new QHBoxLayout;
    auto* label = new QLabel(tr("Weigh out for a &batch of, g"));
    label->setBuddy(m_batch);
    m_batch->setAccessibleName(tr("Batch in grams"));
    m_batch->setMaximumWidth(100);
    foot->addWidget(label);
    foot->addWidget(m_batch);
    foot->addWidget(
        softLabel(tr("A percent on top is of the hundred. Formulas of pure materials are filled in.")), 1);
    m_remove->setAutoDefault(false);
    foot->addWidget(m_remove);
    connect(m_remove, &QPushButton::clicked, this,
            [this] { m_model->removeLine(m_table->currentIndex().row()); });
    return foot;
}

void RecipePane::show(const std::vector<RecipeLine>& lines) {
    m_model->show(lines);
    m_trouble->say({});
    tell();
}

void RecipePane::tell() {
    const auto told = tellRecipe(m_model->lines());
    m_figures->setText(told.figures);
    m_warnings->say(told.warnings);
    const QModelIndex at = m_table->currentIndex();
    m_remove->setEnabled(at.isValid() && !m_model->isNewRow(at.row()));
}

void RecipePane::takeBatch() {
    const double grams = m_batch->text().replace(QLatin1Char(','), QLatin1Char('.')).toDouble();
    const bool good = grams > 0 && grams <= mostGrams;
    m_trouble->say(good ? QString() : tr("A batch is a number of grams."));
    if (good)
        m_model->setBatch(grams);
}

} // namespace ringhold
