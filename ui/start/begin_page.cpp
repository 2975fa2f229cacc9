#include "ui/start/begin_page.h"

#include "ui/common/tone.h"
#include "ui/common/words_on_page.h"
#include "ui/start/before_lighting.h"
#include "ui/start/kiln_choice.h"
#include "ui/start/pack_fields.h"
#include "ui/start/plan_choice.h"
#include "ui/theme/theme.h"

#include <QComboBox>
#include <QFormLayout>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr const char* byHand = QT_TRANSLATE_NOOP("ringhold::BeginPage", "readings by hand");

} // namespace

BeginPage::BeginPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_title(new QLineEdit),
      m_plan(new PlanChoice(notebook)), m_packColumn(new QVBoxLayout), m_pieces(new QPlainTextEdit),
      m_instrument(new QComboBox), m_checklist(new BeforeLighting(notebook)), m_trouble(new QLabel),
      m_begin(new QPushButton(tr("Begin the firing"))) {
    auto* inside = new QFrame;
    inside->setObjectName(QStringLiteral("book"));
    auto* row = new QHBoxLayout(inside);
    row->setContentsMargins(28, 20, 28, 20);
    row->setSpacing(32);
    row->addWidget(makeFirst(), 1);
    row->addWidget(makeSecond(), 1);
    auto* scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setAccessibleName(tr("A new firing"));
    scroll->setFocusPolicy(Qt::NoFocus); // its parts have it
    scroll->setWidget(inside);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(scroll);
    connect(m_begin, &QPushButton::clicked, this, &BeginPage::begin);
    connect(m_plan, &PlanChoice::chosen, this, &BeginPage::suggestCones);
    connect(m_plan, &PlanChoice::refused, this, &BeginPage::refuse);
    connect(&notebook, &Notebook::bookChanged, this, &BeginPage::suggestTitle);
    suggestCones();
    suggestTitle();
}

QWidget* BeginPage::makeFirst() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("A new firing")));
    m_title->setAccessibleName(tr("Title of the firing"));
    auto* form = new QFormLayout;
    form->setSpacing(8);
    m_kiln = new KilnChoice(m_notebook, *form, this);
    form->addRow(tr("Title"), m_title);
    form->addRow(tr("Plan"), m_plan);
    column->addLayout(form);
    column->addSpacing(12);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("Cone packs")));
    column->addLayout(m_packColumn);
    addPack(tr("middle shelf"));
    auto* another = new QPushButton(tr("Another pack"));
    connect(another, &QPushButton::clicked, this,
            [this] { addPack(m_packs.size() == 1 ? tr("bottom shelf") : tr("top shelf")); });
    column->addWidget(another, 0, Qt::AlignLeft);
    column->addSpacing(12);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("Pieces")));
    m_pieces->setAccessibleName(tr("Pieces, one a line: name; glaze; shelf"));
    m_pieces->setPlaceholderText(tr("One a line: name; glaze; shelf"));
    m_pieces->setTabChangesFocus(true);
    column->addWidget(m_pieces, 1);
    return page;
}

QWidget* BeginPage::makeSecond() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("Readings come from")));
    m_instrument->setEditable(true);
    m_instrument->setAccessibleName(tr("Instrument"));
    m_instrument->addItem(tr(byHand));
    for (const auto& kind : m_notebook.instruments().kinds())
        m_instrument->addItem(QString::fromStdString(kind.example));
    auto* source = new QHBoxLayout;
    source->addWidget(m_instrument, 1);
    auto* choose = new QPushButton(tr("Choose and listen …"));
    choose->setToolTip(tr("The instruments there are (Ctrl+I)"));
    connect(choose, &QPushButton::clicked, this, &BeginPage::instrumentWanted);
    source->addWidget(choose);
    column->addLayout(source);
    column->addSpacing(16);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("Before lighting")));
    column->addWidget(m_checklist);
    column->addStretch(1);
    m_trouble->setWordWrap(true);
    m_trouble->setAccessibleName(tr("What is missing"));
    setTone(m_trouble, Tone::warning);
    column->addWidget(m_trouble);
    m_begin->setDefault(true);
    column->addWidget(m_begin, 0, Qt::AlignRight);
    return page;
}

void BeginPage::addPack(const QString& place) {
    m_packs.push_back(new PackFields(place));
    m_packColumn->addWidget(m_packs.back());
    suggestCones();
}

void BeginPage::suggestTitle() {
    if (const auto firings = m_notebook.reader().firings(); firings && !m_title->isModified())
        m_title->setText(tr("firing %1").arg(firings->size() + 1));
}

/// Guide, firing and guard cone of the plan, in packs whose cones nobody has touched.
void BeginPage::suggestCones() {
    if (const auto plan = m_plan->plan())
        for (auto* pack : m_packs)
            pack->suggestFor(*plan);
}

QString BeginPage::instrument() const {
    const QString text = m_instrument->currentText().trimmed();
    return text == tr(byHand) ? QString() : text;
}

void BeginPage::setInstrument(const QString& specification) {
    m_instrument->setCurrentText(specification.isEmpty() ? tr(byHand) : specification);
}

void BeginPage::refuse(const QString& why) {
    m_trouble->setText(why);
}

Result<NewFiring> BeginPage::chosen() {
    NewFiring firing;
    for (const auto* fields : m_packs) {
        const auto pack = fields->pack();
        if (!pack)
            return pack.error();
        if (*pack)
            firing.packs.push_back(**pack);
    }
    firing.pieces = pieces();
    firing.plan = m_plan->plan();
    firing.title = m_title->text().trimmed();
    firing.instrument = instrument();
    const auto kiln = m_kiln->kiln();
    if (!kiln)
        return kiln.error();
    firing.kiln = *kiln;
    const auto probe = m_kiln->probe(*kiln);
    if (!probe)
        return probe.error();
    firing.probe = *probe;
    return firing;
}

std::vector<Piece> BeginPage::pieces() const {
    std::vector<Piece> pieces;
    for (const auto& line : m_pieces->toPlainText().split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        const auto cells = line.split(QLatin1Char(';'));
        Piece piece;
        piece.name = cells.value(0).trimmed().toStdString();
        piece.glaze = cells.value(1).trimmed().toStdString();
        piece.shelf = cells.value(2).trimmed().toStdString();
        piece.catcher = true;
        if (!piece.name.empty())
            pieces.push_back(piece);
    }
    return pieces;
}

void BeginPage::begin() {
    const auto firing = chosen();
    if (!firing) {
        refuse(QString::fromStdString(firing.error().what));
        return;
    }
    const auto begun = m_notebook.begin(*firing);
    refuse(begun ? QString() : QString::fromStdString(begun.error().text()));
    if (begun) {
        m_title->clear();
        m_pieces->clear();
        m_checklist->untick();
        suggestTitle();
    }
}

} // namespace ringhold
