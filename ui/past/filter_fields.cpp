#include "ui/past/filter_fields.h"

#include "ui/common/dates.h"
#include "ui/common/words_on_page.h"
#include "ui/session/preferences.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>

namespace ringhold {

namespace {

/// Nothing for an empty line and for a day that is none.
std::optional<Instant> dayOf(const QLineEdit& line, const Preferences& preferences) {
    const QString text = line.text().trimmed();
    const auto day = dayTyped(text, preferences);
    return text.isEmpty() || !day ? std::nullopt : std::optional(*day);
}

} // namespace

FilterFields::FilterFields(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_kiln(new QComboBox),
      m_trouble(new Remark(Remark::Kind::warning)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(6);
    m_kiln->setAccessibleName(tr("Only of this kiln"));
    m_kiln->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_kiln->addItem(tr("any kiln"));
    grid->addWidget(m_kiln, 0, 0);
    m_glaze = addLine(*grid, 0, 1, tr("glaze"), tr("Only with this glaze"));
    m_cone = addLine(*grid, 0, 2, tr("cone"), tr("Only to this cone"));
    m_from = addLine(*grid, 1, 0, tr("from, 2026-03-01"), tr("Lit on this day or later"));
    m_to = addLine(*grid, 1, 1, tr("to, 2026-03-31"), tr("Lit on this day or earlier"));
    m_grade = addLine(*grid, 1, 2, tr("grade"), tr("Only with a piece of this grade"));
    grid->addWidget(m_trouble, 2, 0, 1, 3);
    grid->setColumnStretch(0, 4);
    grid->setColumnStretch(1, 4);
    grid->setColumnStretch(2, 2);
    connect(m_kiln, &QComboBox::currentIndexChanged, this, &FilterFields::changed);
}

QLineEdit* FilterFields::addLine(QGridLayout& grid, int row, int column, const QString& hint,
                                 const QString& name) {
    auto* line = new QLineEdit;
    line->setPlaceholderText(hint);
    line->setAccessibleName(name);
    line->setClearButtonEnabled(true);
    grid.addWidget(line, row, column);
    connect(line, &QLineEdit::textChanged, this, &FilterFields::changed);
    connect(line, &QLineEdit::editingFinished, this, &FilterFields::tellDays);
    return line;
}

void FilterFields::showKilns(const std::vector<Kiln>& kilns) {
    const QSignalBlocker quiet(m_kiln);
    const QVariant before = m_kiln->currentData();
    m_kiln->clear();
    m_kiln->addItem(tr("any kiln"));
    for (const auto& kiln : kilns)
        m_kiln->addItem(QString::fromStdString(kiln.name), static_cast<qint64>(kiln.id));
    m_kiln->setCurrentIndex(before.isValid() ? std::max(0, m_kiln->findData(before)) : 0);
}

FiringFilter FilterFields::filter() const {
    FiringFilter filter;
    if (const QVariant kiln = m_kiln->currentData(); kiln.isValid())
        filter.kiln = static_cast<KilnId>(kiln.toLongLong());
    filter.glaze = m_glaze->text().trimmed().toStdString();
    filter.cone = m_cone->text().trimmed().toStdString();
    filter.grade = m_grade->text().trimmed().toStdString();
    filter.from = dayOf(*m_from, m_preferences);
    if (const auto last = dayOf(*m_to, m_preferences))
        filter.before = *last + std::chrono::hours(24);
    return filter;
}

void FilterFields::clear() {
    const QSignalBlocker quiet(this);
    m_kiln->setCurrentIndex(0);
    for (auto* line : {m_glaze, m_cone, m_grade, m_from, m_to})
        line->clear();
    m_trouble->say({});
}

void FilterFields::tellDays() {
    for (const auto* line : {m_from, m_to})
        if (!line->text().trimmed().isEmpty() && !dayOf(*line, m_preferences))
            return m_trouble->say(tr("A day is written as 2026-03-01."));
    m_trouble->say({});
}

} // namespace ringhold
