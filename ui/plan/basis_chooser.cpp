#include "ui/plan/basis_chooser.h"

#include "core/book/glaze_cards.h"
#include "ui/session/notebook.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr const char* kilnPreference = "plan kiln";
constexpr const char* conesPreference = "plan cones";
constexpr const char* glazePreference = "plan glaze";
constexpr ConeType coneTypes[] = {ConeType::selfSupporting, ConeType::large, ConeType::small,
                                  ConeType::selfSupportingIronFree, ConeType::largeIronFree};

std::string kept(const Notebook& notebook, const char* name) {
    const auto value = notebook.reader().preference(name);
    return value && *value ? **value : std::string();
}

/// A choice that the book does not take is made anew next time; that is no reason to stop anybody.
void keep(Notebook& notebook, const char* name, std::string_view value) {
    static_cast<void>(notebook.writer().setPreference(name, value));
}

} // namespace

BasisChooser::BasisChooser(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_basis(typicalBasis()), m_evidence(notebook.book()) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(3);
    auto* row = new QHBoxLayout;
    m_kiln = addChoice(QStringLiteral("planKiln"), tr("Kiln that the plan is reckoned for"));
    m_offset = addChoice(QStringLiteral("planProbe"), tr("Probe, and the cones that told its offset"));
    m_cones = addChoice(QStringLiteral("planCones"), tr("Series of the cones"));
    m_glaze = addChoice(QStringLiteral("planGlaze"), tr("Glaze whose crystals are reckoned"));
    row->addWidget(m_kiln, 3);
    row->addWidget(m_offset, 3);
    row->addWidget(m_cones, 3);
    row->addWidget(m_glaze, 2);
    m_words = addWords(QStringLiteral("planOffset"));
    m_glazeWords = addWords(QStringLiteral("planGlazeWords"));
    m_band = new QPushButton(this);
    m_band->setObjectName(QStringLiteral("planBand"));
    m_band->setAutoDefault(false);
    m_band->hide();
    layout->addLayout(row);
    layout->addWidget(m_words);
    auto* glazeRow = new QHBoxLayout;
    glazeRow->addWidget(m_glazeWords, 1);
    glazeRow->addWidget(m_band);
    layout->addLayout(glazeRow);
    for (const auto type : coneTypes) {
        m_cones->addItem(coneTypeWords(type));
        if (coneTypeNamed(kept(m_notebook, conesPreference)) == type)
            m_cones->setCurrentIndex(m_cones->count() - 1);
    }
    loadKilns();
    loadGlazes();
    connect(m_kiln, &QComboBox::activated, this, [this] {
        keep(m_notebook, kilnPreference, m_kiln->currentText().toStdString());
        takeKiln();
    });
    connect(m_offset, &QComboBox::activated, this, &BasisChooser::take);
    connect(m_cones, &QComboBox::activated, this, [this](int chosen) {
        keep(m_notebook, conesPreference, name(coneTypes[chosen]));
        take();
    });
    connect(m_glaze, &QComboBox::activated, this, [this](int chosen) {
        keep(m_notebook, glazePreference, chosen == 0 ? std::string() : m_glaze->currentText().toStdString());
        takeGlaze();
    });
    connect(m_band, &QPushButton::clicked, this, [this] {
        Q_EMIT bandWanted(TemperatureDifference::fromCelsius(std::round(m_known.visible.offered_C)));
    });
    connect(&m_notebook, &Notebook::bookChanged, this, &BasisChooser::loadBook);
    connect(&m_notebook.preferences(), &Preferences::changed, this, &BasisChooser::tell);
}

QLabel* BasisChooser::addWords(const QString& objectName) {
    auto* words = new QLabel(this);
    words->setObjectName(objectName);
    words->setProperty("tone", QStringLiteral("soft"));
    words->setProperty("lettering", QStringLiteral("small"));
    words->setWordWrap(true);
    return words;
}

QComboBox* BasisChooser::addChoice(const QString& objectName, const QString& name) {
    auto* box = new QComboBox(this);
    box->setObjectName(objectName);
    box->setAccessibleName(name);
    box->setToolTip(name);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(5);
    return box;
}

void BasisChooser::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_stale)
        takeGlaze();
}

void BasisChooser::loadBook() {
    m_evidence.forget();
    m_stale = true;
    loadGlazes();
    loadKilns();
    if (isVisible())
        takeGlaze();
}

void BasisChooser::loadGlazes() {
    const auto cards = GlazeCards(m_notebook.book()).all();
    const std::string wanted = kept(m_notebook, glazePreference);
    m_glaze->clear();
    m_glaze->addItem(tr("any glaze"));
    if (cards)
        for (const auto& card : *cards)
            m_glaze->addItem(QString::fromStdString(card.name));
    m_glaze->setCurrentIndex(wanted.empty() ? 0
                                            : std::max(0, m_glaze->findText(QString::fromStdString(wanted))));
}

/// Reads whole firings: only when it is looked at.
void BasisChooser::takeGlaze() {
    m_stale = false;
    m_known = {};
    m_basis.glaze = m_glaze->currentIndex() > 0 ? m_glaze->currentText().toStdString() : std::string();
    if (!m_basis.glaze.empty())
        if (auto known = m_evidence.of(m_basis.glaze))
            m_known = std::move(*known);
    take();
}

void BasisChooser::loadKilns() {
    const auto kilns = m_notebook.reader().kilns();
    m_kilns = kilns ? *kilns : std::vector<Kiln>();
    const std::string wanted = m_basis.kiln ? m_basis.kiln->name : kept(m_notebook, kilnPreference);
    m_kiln->clear();
    for (const auto& kiln : m_kilns)
        m_kiln->addItem(QString::fromStdString(kiln.name));
    m_kiln->addItem(tr("a typical kiln"));
    m_kiln->setCurrentIndex(std::max(0, m_kiln->findText(QString::fromStdString(wanted))));
    takeKiln();
}

void BasisChooser::takeKiln() {
    const auto row = static_cast<std::size_t>(m_kiln->currentIndex());
    const QString before = m_offset->currentText();
    m_basis.kiln.reset();
    m_basis.offset = typicalBasis().offset;
    m_offsets = {m_basis.offset};
    if (row < m_kilns.size()) {
        m_basis.kiln = m_kilns[row];
        if (const auto choices = offsetChoices(m_notebook.reader(), m_kilns[row].id))
            m_offsets = *choices;
    }
    m_offset->clear();
    for (const auto& choice : m_offsets)
        m_offset->addItem(choiceWords(choice));
    m_offset->setCurrentIndex(std::max(0, m_offset->findText(before)));
    take();
}

void BasisChooser::take() {
    m_basis.offset = m_offsets[static_cast<std::size_t>(m_offset->currentIndex())];
    m_basis.cones = coneTypes[m_cones->currentIndex()];
    m_basis.growth = m_known.growth.rate();
    tell();
    Q_EMIT changed();
}

void BasisChooser::tell() {
    m_words->setText(tr("The probe %1.").arg(offsetWords(m_basis.offset.prior, m_notebook.preferences())));
    tellGlaze();
}

void BasisChooser::tellGlaze() {
    const auto& visible = m_known.visible;
    const QString glaze = QString::fromStdString(m_basis.glaze);
    const QString band = m_notebook.preferences().difference(
        TemperatureDifference::fromCelsius(std::round(visible.offered_C)), 0, false);
    QStringList words;
    if (!glaze.isEmpty() && !m_known.growth.told)
        words << tr("Not enough crystals of %1 are measured yet for its own growth rate.").arg(glaze);
    if (!glaze.isEmpty() && visible.told)
        words << tr("In %1 sags under %2 seldom show (%3 answers).").arg(glaze, band).arg(visible.answers);
    m_glazeWords->setText(words.join(QLatin1Char(' ')));
    m_glazeWords->setVisible(!words.isEmpty());
    m_band->setText(tr("&Hold within ± %1").arg(band));
    m_band->setToolTip(tr("The watch then alarms on what shows in this glaze"));
    m_band->setVisible(!glaze.isEmpty() && visible.told);
}

} // namespace ringhold
