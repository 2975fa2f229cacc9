#include "ui/past/cold_pack_entry.h"

#include "core/book/offsets_refiled.h"
#include "core/cones/bending.h"
#include "ui/common/column_scroll.h"
#include "ui/common/forecast_words.h"
#include "ui/common/words_on_page.h"
#include "ui/cones/cone_words.h"
#include "ui/past/opened_firing.h"
#include "ui/session/notebook.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int coneColumns = 2;
constexpr double z90 = 1.645; ///< of a normal distribution, for 90 % in the middle

} // namespace

ColdPackEntry::ColdPackEntry(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_grid(new QGridLayout),
      m_write(new QPushButton(tr("Write the cold pack"))), m_said(new Remark(Remark::Kind::plain)) {
    auto* inside = new QWidget;
    auto* column = new QVBoxLayout(inside);
    column->setContentsMargins(0, 0, 4, 0);
    column->setSpacing(6);
    column->addWidget(softLabel(tr("Cold pack, read when the kiln is open: filed into the probe’s offset.")));
    column->addLayout(m_grid);
    column->addStretch();
    m_grid->setHorizontalSpacing(8);
    m_grid->setVerticalSpacing(4);
    for (int pair = 0; pair < coneColumns; ++pair)
        m_grid->setColumnStretch(2 * pair + 1, 1);
    auto* foot = new QHBoxLayout;
    foot->addWidget(m_said, 1);
    foot->addStretch();
    foot->addWidget(m_write);
    m_write->setAutoDefault(false);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(4);
    all->addWidget(new ColumnScroll(inside), 1);
    all->addLayout(foot);
    connect(m_write, &QPushButton::clicked, this, &ColdPackEntry::write);
}

void ColdPackEntry::show(std::shared_ptr<const OpenedFiring> firing) {
    const bool same = m_firing && firing && m_firing->record.firing.id == firing->record.firing.id;
    if (!same)
        m_said->say({});
    m_firing = std::move(firing);
    m_choices.clear();
    while (auto* item = m_grid->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    const bool asks = m_firing && m_firing->record.firing.ended;
    setVisible(asks);
    if (asks)
        for (const auto& pack : m_firing->record.packs)
            addPack(pack);
    tellButton();
}

void ColdPackEntry::addPack(const Pack& pack) {
    int row = m_grid->rowCount();
    if (m_firing->record.packs.size() > 1)
        m_grid->addWidget(new QLabel(QString::fromStdString(pack.place)), row++, 0, 1, 2 * coneColumns);
    for (std::size_t i = 0; i < pack.cones.size(); ++i) {
        const QString cone = QString::fromStdString(pack.cones[i]);
        auto* hours = new QComboBox;
        hours->setAccessibleName(tr("Cone %1 cold, %2").arg(cone, QString::fromStdString(pack.place)));
        hours->addItem(tr("not read"));
        for (double hour = hourStanding; hour <= hourDown; hour += 0.5)
            hours->addItem(hourOnButton(hour), hour);
        if (const auto known = before(pack.id, pack.cones[i]))
            hours->setCurrentIndex(hours->findData(known->hour));
        const int at = row + static_cast<int>(i) / coneColumns;
        const int column = 2 * (static_cast<int>(i) % coneColumns);
        m_grid->addWidget(new QLabel(cone), at, column, Qt::AlignRight);
        m_grid->addWidget(hours, at, column + 1);
        m_choices.push_back({pack.id, pack.cones[i], hours});
        connect(hours, &QComboBox::activated, this, [this] {
            m_said->say({});
            tellButton();
        });
    }
}

/// The newest cold look that counts.
std::optional<Look> ColdPackEntry::before(PackId pack, const std::string& cone) const {
    std::optional<Look> known;
    for (const auto& look : m_firing->record.looks)
        if (look.cold && !look.struck && look.pack == pack && look.cone == cone)
            known = look;
    return known;
}

/// With the id of the look that it corrects, if there is one. What was read once can be corrected, not
/// unread.
std::vector<Look> ColdPackEntry::unwritten() const {
    std::vector<Look> looks;
    for (const auto& [pack, cone, hours] : m_choices) {
        const auto known = before(pack, cone);
        const auto chosen = hours->currentData();
        if (chosen.isValid() && (!known || known->hour != chosen.toDouble()))
            looks.push_back({known ? known->id : LookId{}, pack, m_notebook.clock().now(), cone,
                             chosen.toDouble(), true, false});
    }
    return looks;
}

void ColdPackEntry::tellButton() {
    m_write->setEnabled(!unwritten().empty());
}

Status ColdPackEntry::keep(const std::vector<Look>& looks) {
    auto writer = m_notebook.writer();
    for (const auto& look : looks) {
        const auto kept =
            look.id == LookId{} ? writer.add(look) : writer.correct(look, m_notebook.clock().now());
        if (!kept)
            return kept.error();
    }
    return {};
}

Status ColdPackEntry::fileAgain() {
    const auto told = refileOffsets(m_notebook.book(), m_firing->record.firing.id);
    if (!told)
        return told.error();
    QStringList filed;
    for (const auto& offset : *told) {
        const auto half = offset.sd * z90;
        filed << tr("Filed for %1: the probe reads %2.")
                     .arg(QString::fromStdString(offset.place),
                          offsetWords(Interval<TemperatureDifference>{offset.mean - half, offset.mean,
                                                                      offset.mean + half},
                                      m_notebook.preferences()));
    }
    m_said->say(
        filed.isEmpty()
            ? tr("Written. There is no offset to file: no probe, no readings, or cones that tell nothing.")
            : filed.join(QLatin1Char(' ')));
    return {};
}

void ColdPackEntry::write() {
    auto done = keep(unwritten());
    if (done)
        done = fileAgain();
    if (!done)
        m_said->say(QString::fromStdString(done.error().text()));
    Q_EMIT written();
}

} // namespace ringhold
