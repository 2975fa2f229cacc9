#include "ui/plan/basis_chooser.h"

#include "ui/session/notebook.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr const char* kilnPreference = "plan kiln";
constexpr const char* conesPreference = "plan cones";
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
    : QWidget(parent), m_notebook(notebook), m_basis(typicalBasis()) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(3);
    auto* row = new QHBoxLayout;
    m_kiln = addChoice(QStringLiteral("planKiln"), QStringLiteral("Kiln that the plan is reckoned for"));
    m_offset =
        addChoice(QStringLiteral("planProbe"), QStringLiteral("Probe, and the cones that told its offset"));
    m_cones = addChoice(QStringLiteral("planCones"), QStringLiteral("Series of the cones"));
    row->addWidget(m_kiln, 2);
    row->addWidget(m_offset, 3);
    row->addWidget(m_cones, 2);
    m_words = new QLabel(this);
    m_words->setObjectName(QStringLiteral("planOffset"));
    m_words->setProperty("tone", QStringLiteral("soft"));
    m_words->setProperty("lettering", QStringLiteral("small"));
    m_words->setWordWrap(true);
    layout->addLayout(row);
    layout->addWidget(m_words);
    for (const auto type : coneTypes) {
        m_cones->addItem(coneTypeWords(type));
        if (coneTypeNamed(kept(m_notebook, conesPreference)) == type)
            m_cones->setCurrentIndex(m_cones->count() - 1);
    }
    loadKilns();
    connect(m_kiln, &QComboBox::activated, this, [this] {
        keep(m_notebook, kilnPreference, m_kiln->currentText().toStdString());
        takeKiln();
    });
    connect(m_offset, &QComboBox::activated, this, &BasisChooser::take);
    connect(m_cones, &QComboBox::activated, this, [this](int chosen) {
        keep(m_notebook, conesPreference, name(coneTypes[chosen]));
        take();
    });
    connect(&m_notebook, &Notebook::bookChanged, this, &BasisChooser::loadKilns);
    connect(&m_notebook.preferences(), &Preferences::changed, this, &BasisChooser::tell);
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

void BasisChooser::loadKilns() {
    const auto kilns = m_notebook.reader().kilns();
    m_kilns = kilns ? *kilns : std::vector<Kiln>();
    const std::string wanted = m_basis.kiln ? m_basis.kiln->name : kept(m_notebook, kilnPreference);
    m_kiln->clear();
    for (const auto& kiln : m_kilns)
        m_kiln->addItem(QString::fromStdString(kiln.name));
    m_kiln->addItem(QStringLiteral("a typical kiln"));
    m_kiln->setCurrentIndex(std::max(0, m_kiln->findText(QString::fromStdString(wanted))));
    takeKiln();
}

void BasisChooser::takeKiln() {
    const auto row = static_cast<std::size_t>(m_kiln->currentIndex());
    const QString before = m_offset->currentText();
    m_basis = typicalBasis();
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
    tell();
    Q_EMIT changed();
}

void BasisChooser::tell() {
    m_words->setText(
        QStringLiteral("The probe %1.").arg(offsetWords(m_basis.offset.prior, m_notebook.preferences())));
}

} // namespace ringhold
