#include "ui/start/pack_fields.h"

#include "core/cones/cone_table.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QRegularExpression>

#include <algorithm>

namespace ringhold {

PackFields::PackFields(const QString& place, QWidget* parent)
    : QWidget(parent), m_place(new QLineEdit(place)), m_cones(new QLineEdit(QStringLiteral("8, 9, 10"))),
      m_type(new QComboBox), m_left(new QCheckBox(tr("leans left"))) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_place->setAccessibleName(tr("Where the pack stands"));
    m_cones->setAccessibleName(tr("Cones: guide, firing, guard"));
    m_cones->setToolTip(tr("Guide, firing and guard cone"));
    m_type->setAccessibleName(tr("Series of the cones"));
    m_place->setMinimumWidth(m_place->fontMetrics().horizontalAdvance(tr("middle shelf")) + 24);
    m_cones->setFixedWidth(m_cones->fontMetrics().horizontalAdvance(QStringLiteral("10, 11, 12")) + 24);
    m_type->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_type->setMinimumContentsLength(8);
    for (const auto type : {ConeType::selfSupporting, ConeType::large, ConeType::small,
                            ConeType::selfSupportingIronFree, ConeType::largeIronFree}) {
        const auto words = name(type);
        m_type->addItem(QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size())),
                        static_cast<int>(type));
    }
    row->addWidget(m_place, 2);
    row->addWidget(m_cones);
    row->addWidget(m_type, 2);
    row->addWidget(m_left);
}

Result<std::optional<Pack>> PackFields::pack() const {
    Pack pack;
    pack.place = m_place->text().trimmed().toStdString();
    pack.type = static_cast<ConeType>(m_type->currentData().toInt());
    pack.leansLeft = m_left->isChecked();
    static const QRegularExpression separators(QStringLiteral("[,;\\s]+"));
    for (const auto& cone : m_cones->text().split(separators, Qt::SkipEmptyParts)) {
        if (!ConeTable::builtIn().find(cone.toStdString(), pack.type))
            return Error{
                ErrorKind::badInput,
                tr("There is no cone %1 in the series %2.").arg(cone, m_type->currentText()).toStdString()};
        pack.cones.push_back(cone.toStdString());
    }
    if (pack.cones.empty())
        return std::optional<Pack>();
    if (pack.place.empty())
        return Error{ErrorKind::badInput, tr("Say where the pack stands.").toStdString()};
    return std::optional(pack);
}

void PackFields::suggestFor(const Plan& plan) {
    const auto waits = [](const Step& step) { return std::holds_alternative<ConeWait>(step); };
    const auto wait = std::ranges::find_if(plan.steps, waits);
    if (wait == plan.steps.end() || m_cones->isModified())
        return;
    const auto series = ConeTable::builtIn().series(static_cast<ConeType>(m_type->currentData().toInt()));
    const auto firing = std::ranges::find(series, std::get<ConeWait>(*wait).cone, &Cone::name);
    if (firing == series.end())
        return;
    QStringList cones;
    for (auto cone = firing == series.begin() ? firing : firing - 1; cone != series.end() && cones.size() < 3;
         ++cone)
        cones << QString::fromStdString((*cone)->name);
    m_cones->setText(cones.join(QStringLiteral(", ")));
}

} // namespace ringhold
