#include "ui/plan/figures_view.h"

#include "ui/theme/theme.h"

#include <QGridLayout>
#include <QLabel>

namespace ringhold {

FiguresView::FiguresView(const Theme& theme, QWidget* parent)
    : QFrame(parent), m_theme(theme), m_grid(new QGridLayout), m_warnings(new QLabel(this)) {
    setObjectName(QStringLiteral("planFigures"));
    setProperty("card", true);
    m_grid->setContentsMargins(12, 8, 12, 8);
    m_grid->setHorizontalSpacing(12);
    m_grid->setVerticalSpacing(3);
    m_grid->setColumnStretch(2, 1);
    m_warnings->setObjectName(QStringLiteral("planWarnings"));
    m_warnings->setWordWrap(true);
    m_warnings->setProperty("tone", QStringLiteral("warning"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(m_grid);
    m_warnings->setContentsMargins(12, 0, 12, 8);
    layout->addWidget(m_warnings);
    connect(&theme, &Theme::changed, this, &FiguresView::dress);
}

QLabel* FiguresView::addLabel(int row, int column, const char* tone) {
    auto* label = new QLabel(this);
    label->setProperty("tone", QString::fromLatin1(tone));
    label->setWordWrap(column == 2);
    m_grid->addWidget(label, row, column, Qt::AlignTop);
    return label;
}

void FiguresView::show(const std::vector<PlanFigure>& figures, const QStringList& warnings) {
    while (m_rows.size() < figures.size()) {
        const int row = static_cast<int>(m_rows.size());
        m_rows.push_back({addLabel(row, 0, "soft"), addLabel(row, 1, ""), addLabel(row, 2, "soft")});
    }
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const auto [label, value, source] = m_rows[i];
        const bool used = i < figures.size();
        const auto figure = used ? figures[i] : PlanFigure();
        label->setText(figure.label);
        value->setText(figure.value);
        source->setText(figure.source);
        for (auto* each : m_rows[i])
            each->setVisible(used);
    }
    setVisible(!figures.empty());
    m_warnings->setText(warnings.join(QLatin1Char('\n')));
    m_warnings->setVisible(!warnings.isEmpty());
    dress();
}

void FiguresView::dress() {
    for (const auto& row : m_rows) {
        row[0]->setFont(m_theme.text(TextSize::small));
        row[1]->setFont(m_theme.text(TextSize::body, QFont::Bold));
        row[2]->setFont(m_theme.text(TextSize::small));
    }
}

} // namespace ringhold
