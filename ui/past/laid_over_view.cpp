#include "ui/past/laid_over_view.h"

#include "ui/common/fitted_table.h"
#include "ui/common/words_on_page.h"
#include "ui/past/curves_plot.h"
#include "ui/past/difference_model.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace ringhold {

QPen layPen(std::size_t index, const Theme& theme) {
    const auto& palette = theme.palette();
    const std::array colours{palette.kiln, palette.plan, palette.forecastText, palette.coneOutline,
                             palette.ink};
    constexpr std::array strokes{Qt::SolidLine, Qt::DashLine, Qt::DashDotLine, Qt::DotLine};
    return QPen(colours[index % colours.size()], 1.8, strokes[index % strokes.size()]);
}

LaidOverView::LaidOverView(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_differences(new DifferenceModel(preferences, this)),
      m_alignment(new QComboBox), m_plot(new CurvesPlot(preferences, theme)),
      m_remarks(new Remark(Remark::Kind::warning)), m_table(new FittedTable), m_note(softLabel()) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* head = new QHBoxLayout;
    auto* label = new QLabel(tr("Hours after the"));
    head->addWidget(label);
    m_alignment->addItem(tr("start"), static_cast<int>(Alignment::start));
    m_alignment->addItem(tr("firing cone was down"), static_cast<int>(Alignment::coneDown));
    m_alignment->addItem(tr("growth hold began"), static_cast<int>(Alignment::growthHold));
    m_alignment->setAccessibleName(tr("What the firings are aligned at"));
    label->setBuddy(m_alignment);
    head->addWidget(m_alignment);
    head->addStretch(1);
    column->addLayout(head);
    column->addWidget(m_plot, 3);
    column->addWidget(m_remarks);
    m_table->setModel(m_differences);
    m_table->verticalHeader()->setVisible(true);
    m_table->verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->verticalHeader()->setHighlightSections(false);
    m_table->setAccessibleName(tr("What differs"));
    m_table->setIconSize({26, 12});
    column->addWidget(m_table, 3);
    column->addWidget(m_note);
    connect(m_alignment, &QComboBox::currentIndexChanged, this, &LaidOverView::lay);
    connect(&theme, &Theme::changed, this, &LaidOverView::lay);
}

void LaidOverView::show(std::vector<std::shared_ptr<const OpenedFiring>> firings) {
    m_firings = std::move(firings);
    lay();
}

void LaidOverView::lay() {
    const auto alignment = static_cast<Alignment>(m_alignment->currentData().toInt());
    auto laid = layOver(m_firings, alignment);
    std::vector<QPen> pens;
    std::vector<DrawnCurve> curves;
    for (std::size_t i = 0; i < laid.size(); ++i) {
        pens.push_back(layPen(i, m_theme));
        if (laid[i].zero)
            curves.push_back({std::shared_ptr<const Curve>(laid[i].firing, &laid[i].firing->control),
                              laid[i].zero, layName(i), pens.back()});
    }
    m_plot->show(std::move(curves));
    m_remarks->say(layRemarks(laid, alignment));
    m_table->setFont(m_theme.text(TextSize::small));
    const auto firings = laid.size();
    m_differences->show(std::move(laid), std::move(pens));
    m_table->setColumns(std::vector<FittedTable::Column>(firings, {12, 1}));
    tellNote();
}

void LaidOverView::tellNote() {
    const auto& comparison = m_differences->comparison();
    const bool unlike =
        std::ranges::any_of(comparison.rows, [](const FigureRow& row) { return !row.comparable; });
    QString note = comparison.corrected
                       ? tr("Each probe’s offset is taken off the temperatures in the table; ± is the 90 % "
                            "interval of what is left unsure.")
                       : tr("Temperatures are as the probes read them.");
    if (unlike)
        note += QLatin1Char(' ') + tr("* not to be compared: the probes differ.");
    m_note->setText(note + QLatin1Char(' ') + tr("Heavy heads: what differs enough to look at."));
}

} // namespace ringhold
