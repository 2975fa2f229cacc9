#include "ui/start/begin_page.h"

#include "core/plan/plan_examples.h"
#include "core/plan/plan_file.h"
#include "ui/common/tone.h"
#include "ui/common/words_on_page.h"
#include "ui/start/pack_fields.h"
#include "ui/theme/theme.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
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

const char* const checklist[] = {
    QT_TRANSLATE_NOOP("ringhold::BeginPage", "Catchers under every piece, wash on the shelves"),
    QT_TRANSLATE_NOOP("ringhold::BeginPage", "Packs in sight of the spyhole, spare cones at hand"),
    QT_TRANSLATE_NOOP("ringhold::BeginPage", "Ventilation on; carbon monoxide alarm working where gas burns"),
    QT_TRANSLATE_NOOP("ringhold::BeginPage", "The kiln's own over-temperature limiter set"),
    QT_TRANSLATE_NOOP("ringhold::BeginPage",
                      "Infrared-rated eyewear at the spyhole, chosen with its supplier and to local rules"),
};

constexpr const char* caution = QT_TRANSLATE_NOOP(
    "ringhold::BeginPage",
    "Ringhold keeps a notebook. It controls nothing and is no safety device: limiter, wiring, gas and "
    "ventilation are for licensed trades and local codes. Never leave a firing alone.");

constexpr const char* byHand = QT_TRANSLATE_NOOP("ringhold::BeginPage", "readings by hand");

} // namespace

BeginPage::BeginPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_kiln(new QComboBox), m_probe(new QComboBox),
      m_probeType(new QComboBox), m_title(new QLineEdit), m_plan(new QComboBox),
      m_packColumn(new QVBoxLayout), m_pieces(new QPlainTextEdit), m_instrument(new QComboBox),
      m_trouble(new QLabel), m_begin(new QPushButton(tr("Begin the firing"))) {
    auto* inside = new QFrame;
    inside->setObjectName(QStringLiteral("book"));
    auto* row = new QHBoxLayout(inside);
    row->setContentsMargins(32, 22, 32, 22);
    row->setSpacing(40);
    row->addWidget(makeFirst(), 1);
    row->addWidget(makeSecond(), 1);
    auto* scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(inside);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(scroll);
    connect(m_kiln, &QComboBox::currentTextChanged, this, &BeginPage::fillProbes);
    connect(m_begin, &QPushButton::clicked, this, &BeginPage::begin);
    connect(&notebook, &Notebook::bookChanged, this, &BeginPage::fillKilns);
    fillKilns();
    fillPlans();
}

QWidget* BeginPage::makeFirst() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("A new firing")));
    auto* form = new QFormLayout;
    form->setSpacing(8);
    m_kiln->setEditable(true);
    m_probe->setEditable(true);
    m_kiln->setAccessibleName(tr("Kiln"));
    m_probe->setAccessibleName(tr("Probe"));
    m_probeType->setAccessibleName(tr("Thermocouple type"));
    m_title->setAccessibleName(tr("Title of the firing"));
    m_plan->setAccessibleName(tr("Plan"));
    m_kiln->lineEdit()->setPlaceholderText(tr("name of the kiln"));
    m_probe->lineEdit()->setPlaceholderText(tr("name of the probe"));
    for (const auto type :
         {ThermocoupleType::K, ThermocoupleType::N, ThermocoupleType::S, ThermocoupleType::R,
          ThermocoupleType::B, ThermocoupleType::E, ThermocoupleType::J, ThermocoupleType::T}) {
        const auto letter = name(type);
        m_probeType->addItem(
            tr("type %1").arg(QString::fromUtf8(letter.data(), static_cast<qsizetype>(letter.size()))),
            static_cast<int>(type));
    }
    auto* probe = new QHBoxLayout;
    probe->addWidget(m_probe, 1);
    probe->addWidget(m_probeType);
    form->addRow(tr("Kiln"), m_kiln);
    form->addRow(tr("Probe"), probe);
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
    for (const char* line : checklist) {
        auto* box = new QCheckBox(tr(line));
        column->addWidget(box);
    }
    auto* words = new QLabel(tr(caution));
    words->setWordWrap(true);
    setTone(words, Tone::soft);
    column->addSpacing(8);
    column->addWidget(words);
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
}

void BeginPage::fillKilns() {
    const QString before = m_kiln->currentText();
    m_kiln->clear();
    if (const auto kilns = m_notebook.reader().kilns())
        for (const auto& kiln : *kilns)
            m_kiln->addItem(QString::fromStdString(kiln.name));
    if (!before.isEmpty())
        m_kiln->setCurrentText(before);
    fillProbes();
    if (const auto firings = m_notebook.reader().firings(); firings && m_title->text().isEmpty())
        m_title->setText(tr("firing %1").arg(firings->size() + 1));
}

void BeginPage::fillProbes() {
    m_probe->clear();
    const auto kiln = m_notebook.reader().kilnNamed(m_kiln->currentText().trimmed().toStdString());
    if (!kiln || !*kiln)
        return;
    if (const auto probes = m_notebook.reader().probes((*kiln)->id))
        for (const auto& probe : *probes)
            if (!probe.retired)
                m_probe->addItem(QString::fromStdString(probe.label));
}

void BeginPage::fillPlans() {
    m_plans.clear();
    m_plan->addItem(tr("no plan"));
    for (const auto& example : examplePlans()) {
        m_plans.push_back(example.plan);
        m_plan->addItem(QString::fromStdString(example.plan.name));
    }
    m_plan->addItem(tr("from a plan file …"));
    m_plan->setCurrentIndex(1);
    connect(m_plan, &QComboBox::activated, this, [this](int index) {
        if (index == m_plan->count() - 1)
            choosePlanFile();
    });
}

void BeginPage::choosePlanFile() {
    const QString file = QFileDialog::getOpenFileName(this, tr("A plan file"), {}, tr("Plans (*.json)"));
    if (file.isEmpty()) {
        m_plan->setCurrentIndex(0);
        return;
    }
    auto plan = readPlan(file.toStdString());
    if (!plan) {
        m_plan->setCurrentIndex(0);
        refuse(QString::fromStdString(plan.error().text()));
        return;
    }
    m_plans.push_back(std::move(*plan));
    m_plan->insertItem(m_plan->count() - 1, QString::fromStdString(m_plans.back().name));
    m_plan->setCurrentIndex(m_plan->count() - 2);
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

Result<KilnId> BeginPage::chosenKiln() {
    const std::string wanted = m_kiln->currentText().trimmed().toStdString();
    if (wanted.empty())
        return Error{ErrorKind::badInput, tr("Give the kiln a name.").toStdString()};
    const auto known = m_notebook.reader().kilnNamed(wanted);
    if (!known)
        return known.error();
    if (*known)
        return (*known)->id;
    Kiln kiln;
    kiln.name = wanted;
    return m_notebook.writer().add(kiln);
}

Result<std::optional<ProbeId>> BeginPage::chosenProbe(KilnId kiln) {
    const std::string wanted = m_probe->currentText().trimmed().toStdString();
    if (wanted.empty())
        return std::optional<ProbeId>();
    const auto probes = m_notebook.reader().probes(kiln);
    if (!probes)
        return probes.error();
    for (const auto& probe : *probes)
        if (probe.label == wanted && !probe.retired)
            return std::optional(probe.id);
    Probe probe;
    probe.kiln = kiln;
    probe.label = wanted;
    probe.type = static_cast<ThermocoupleType>(m_probeType->currentData().toInt());
    probe.fitted = m_notebook.clock().now();
    const auto added = m_notebook.writer().add(probe);
    if (!added)
        return added.error();
    return std::optional(*added);
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
    for (const auto& line : m_pieces->toPlainText().split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        const auto cells = line.split(QLatin1Char(';'));
        Piece piece;
        piece.name = cells.value(0).trimmed().toStdString();
        piece.glaze = cells.value(1).trimmed().toStdString();
        piece.shelf = cells.value(2).trimmed().toStdString();
        piece.catcher = true;
        if (!piece.name.empty())
            firing.pieces.push_back(piece);
    }
    if (const int plan = m_plan->currentIndex() - 1; plan >= 0 && plan < static_cast<int>(m_plans.size()))
        firing.plan = m_plans[static_cast<std::size_t>(plan)];
    firing.title = m_title->text().trimmed();
    firing.instrument = instrument();
    const auto kiln = chosenKiln();
    if (!kiln)
        return kiln.error();
    firing.kiln = *kiln;
    const auto probe = chosenProbe(*kiln);
    if (!probe)
        return probe.error();
    firing.probe = *probe;
    return firing;
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
    }
}

} // namespace ringhold
