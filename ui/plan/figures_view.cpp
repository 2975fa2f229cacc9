#include "ui/plan/figures_view.h"

#include <QGridLayout>
#include <QLabel>

namespace ringhold {

namespace {

/// Rich text takes a thin blank for one that may break lines.
QString asHtml(const QString& words) {
    return words.toHtmlEscaped().replace(QChar(0x202f), QChar(0x00a0));
}

} // namespace

FiguresView::FiguresView(QWidget* parent)
    : QFrame(parent), m_grid(new QGridLayout), m_warnings(new QLabel(this)) {
    setObjectName(QStringLiteral("planFigures"));
    setProperty("card", true);
    m_grid->setContentsMargins(10, 6, 10, 6);
    m_grid->setHorizontalSpacing(10);
    m_grid->setVerticalSpacing(2);
    m_grid->setColumnStretch(1, 1);
    m_warnings->setObjectName(QStringLiteral("planWarnings"));
    m_warnings->setWordWrap(true);
    m_warnings->setProperty("tone", QStringLiteral("warning"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(m_grid);
    m_warnings->setContentsMargins(12, 0, 12, 8);
    layout->addWidget(m_warnings);
}

QLabel* FiguresView::addLabel(int row, int column) {
    auto* label = new QLabel(this);
    const bool isFigure = column == 1;
    label->setProperty("tone", isFigure ? QString() : QStringLiteral("soft"));
    label->setProperty("lettering", QStringLiteral("small"));
    label->setWordWrap(isFigure);
    m_grid->addWidget(label, row, column, isFigure ? Qt::Alignment() : Qt::AlignTop);
    return label;
}

void FiguresView::show(const std::vector<PlanFigure>& figures, const QStringList& warnings) {
    while (m_rows.size() < figures.size()) {
        const int row = static_cast<int>(m_rows.size());
        m_rows.push_back({addLabel(row, 0), addLabel(row, 1)});
    }
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const bool used = i < figures.size();
        const auto figure = used ? figures[i] : PlanFigure();
        m_rows[i][0]->setText(figure.label);
        m_rows[i][1]->setText(
            QStringLiteral("<big><b>%1</b></big> %2").arg(asHtml(figure.value), asHtml(figure.source)));
        for (auto* each : m_rows[i])
            each->setVisible(used);
    }
    setVisible(!figures.empty());
    m_warnings->setText(warnings.join(QLatin1Char('\n')));
    m_warnings->setVisible(!warnings.isEmpty());
}

} // namespace ringhold
