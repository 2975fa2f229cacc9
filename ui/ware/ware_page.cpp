#include "ui/ware/ware_page.h"

#include "ui/common/firing_words.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/ware/last_load.h"
#include "ui/ware/ware_table.h"

#include <QComboBox>
#include <QFrame>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

QString counted(int count, const QString& one, const QString& many) {
    return count == 1 ? one : many.arg(count);
}

/// Live ones first, then the latest.
void sortForChoice(std::vector<FiringSummary>& firings) {
    std::ranges::sort(firings, [](const FiringSummary& a, const FiringSummary& b) {
        return a.ended.has_value() != b.ended.has_value() ? !a.ended : a.began > b.began;
    });
}

} // namespace

WarePage::WarePage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_model(new WareModel(notebook, WareModel::Access::write, this)),
      m_firings(new QComboBox), m_copy(new QPushButton(tr("&Copy the last load"))),
      m_takeOut(new QPushButton(tr("&Take out"))), m_putBack(new QPushButton(tr("Put &back"))),
      m_counts(softLabel()), m_flame(new Remark(Remark::Kind::warning)),
      m_trouble(new Remark(Remark::Kind::warning)), m_table(new WareTable) {
    QVBoxLayout* column = nullptr;
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->addWidget(sheet(column));
    column->addLayout(makeHead(theme));
    column->addWidget(m_flame);
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Pieces and what came out"));
    column->addWidget(m_table, 1);
    column->addWidget(m_trouble);
    column->addLayout(makeFoot());
    connectAll();
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { refresh(); });
}

QLayout* WarePage::makeHead(const Theme& theme) {
    auto* head = new QHBoxLayout;
    head->addWidget(new Heading(theme, TextSize::title, tr("Ware")));
    m_firings->setAccessibleName(tr("Firing whose ware is shown"));
    m_firings->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    head->addWidget(m_firings, 1);
    m_counts->setWordWrap(false);
    head->addWidget(m_counts);
    return head;
}

QLayout* WarePage::makeFoot() {
    auto* foot = new QHBoxLayout;
    foot->addWidget(
        softLabel(
            tr("A name in the last line adds a piece. Enter moves on; crystals by digit: 0 none, 1 few, "
               "2 many, 3 covered; Space ticks; Delete empties.")),
        1);
    m_copy->setToolTip(tr("The pieces of this kiln’s firing before, as they were set"));
    m_takeOut->setToolTip(tr("Takes the piece of this line out of the load"));
    m_putBack->hide();
    for (auto* button : {m_putBack, m_takeOut, m_copy}) {
        button->setAutoDefault(false);
        foot->addWidget(button);
    }
    return foot;
}

void WarePage::connectAll() {
    connect(m_firings, &QComboBox::currentIndexChanged, this, &WarePage::showChosen);
    connect(m_copy, &QPushButton::clicked, this, &WarePage::copyLastLoad);
    connect(m_takeOut, &QPushButton::clicked, this, &WarePage::takeOut);
    connect(m_putBack, &QPushButton::clicked, this, &WarePage::putBack);
    connect(m_model, &WareModel::troubled, m_trouble, &Remark::say);
    connect(m_model, &WareModel::written, this, &WarePage::wrote);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, &WarePage::tellCounts);
}

std::optional<FiringId> WarePage::chosen() const {
    const QVariant id = m_firings->currentData();
    return id.isValid() ? std::optional(static_cast<FiringId>(id.toLongLong())) : std::nullopt;
}

void WarePage::showFiring(FiringId firing) {
    if (m_firings->findData(static_cast<qint64>(firing)) < 0)
        listFirings();
    m_firings->setCurrentIndex(m_firings->findData(static_cast<qint64>(firing)));
}

void WarePage::refresh() {
    listFirings();
    showChosen();
}

void WarePage::listFirings() {
    auto firings = m_notebook.reader().firings();
    if (!firings)
        return m_trouble->say(QString::fromStdString(firings.error().text()));
    sortForChoice(*firings);
    const QVariant before = m_firings->currentData();
    const QSignalBlocker quiet(m_firings);
    m_firings->clear();
    for (const auto& firing : *firings)
        m_firings->addItem(firingWords(firing, m_notebook.preferences()), static_cast<qint64>(firing.id));
    m_firings->setCurrentIndex(firings->empty() ? -1 : std::max(0, m_firings->findData(before)));
    m_firings->setEnabled(!firings->empty());
}

void WarePage::showChosen() {
    const auto id = chosen();
    if (!id) {
        m_model->show({}, {}, {}, false);
        return tellCounts();
    }
    const auto reader = m_notebook.reader();
    const auto firing = reader.firing(*id);
    const auto kilns = reader.kilns();
    auto pieces = reader.pieces(*id);
    const auto outcomes = reader.outcomes(*id);
    if (!firing || !kilns || !pieces || !outcomes)
        return m_trouble->say(tr("The book cannot be read just now."));
    const auto kiln = std::ranges::find(*kilns, firing->kiln, &Kiln::id);
    const bool flame = kiln != kilns->end() && kiln->fuel != Fuel::electric;
    const QModelIndex at = m_table->currentIndex();
    const auto [row, column] = std::pair(at.row(), at.column());
    m_model->show(*id, std::move(*pieces), *outcomes, flame);
    if (!m_table->currentIndex().isValid())
        m_table->setCurrentIndex(
            m_model->index(std::clamp(row, 0, m_model->rowCount() - 1), std::max(column, 0)));
    m_trouble->say({});
    tellCounts();
}

void WarePage::tellCounts() {
    const int pieces = m_model->pieceCount();
    m_counts->setText(chosen() ? counted(pieces, tr("1 piece"), tr("%1 pieces")) +
                                     tr(", %1 judged").arg(m_model->judgedCount())
                               : tr("No firing yet: begin one on the Firing page."));
    const int open = m_model->openToFlame();
    m_flame->say(
        open == 0
            ? QString()
            : counted(open, tr("1 piece stands"), tr("%1 pieces stand")) +
                  tr(" in the flame without a sagger: a reducing flame takes zinc out of the glaze, and "
                     "crystals need it."));
    const bool some = chosen().has_value();
    m_copy->setEnabled(some);
    m_table->setEnabled(some);
    m_takeOut->setEnabled(some && m_table->currentIndex().isValid() &&
                          !m_model->isNewRow(m_table->currentIndex().row()));
}

void WarePage::wrote() {
    m_trouble->say({});
    tellCounts();
    m_fresh->tellOthers();
}

void WarePage::copyLastLoad() {
    const auto id = chosen();
    auto load = id ? lastLoad(m_notebook.reader(), *id) : std::optional<LastLoad>();
    if (!load)
        return m_trouble->say(QString::fromStdString(load.error().text()));
    if (!*load)
        return m_trouble->say(tr("No earlier firing of this kiln has its load in the book."));
    auto pieces = std::move((*load)->pieces);
    for (auto& piece : pieces)
        piece.firing = *id;
    if (const auto added = m_notebook.writer().add(pieces); !added)
        return m_trouble->say(QString::fromStdString(added.error().text()));
    showChosen();
    wrote();
}

void WarePage::takeOut() {
    const int row = m_table->currentIndex().row();
    if (row < 0 || m_model->isNewRow(row))
        return;
    m_taken = TakenOut{m_model->piece(row), m_model->outcome(row)};
    if (const auto removed = m_notebook.writer().remove(m_taken->piece.id); !removed)
        return m_trouble->say(QString::fromStdString(removed.error().text()));
    showChosen();
    wrote();
    m_putBack->setText(tr("Put “%1” &back").arg(QString::fromStdString(m_taken->piece.name)));
    m_putBack->show();
}

void WarePage::putBack() {
    auto writer = m_notebook.writer();
    const auto id = writer.add(m_taken->piece);
    if (!id)
        return m_trouble->say(QString::fromStdString(id.error().text()));
    m_taken->outcome.piece = *id;
    if (const auto set = writer.set(m_taken->outcome); !set)
        return m_trouble->say(QString::fromStdString(set.error().text()));
    m_putBack->hide();
    if (chosen() == m_taken->piece.firing)
        showChosen();
    wrote();
}

} // namespace ringhold
