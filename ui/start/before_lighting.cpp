#include "ui/start/before_lighting.h"

#include "core/book/kiln_care.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/tone.h"
#include "ui/session/notebook.h"

#include <QCheckBox>
#include <QLabel>
#include <QVBoxLayout>

namespace ringhold {

namespace {

const char* const usual[] = {
    QT_TRANSLATE_NOOP("ringhold::BeforeLighting", "Catchers under every piece, wash on the shelves"),
    QT_TRANSLATE_NOOP("ringhold::BeforeLighting", "Packs in sight of the spyhole, spare cones at hand"),
    QT_TRANSLATE_NOOP("ringhold::BeforeLighting", "Ventilation on; carbon monoxide alarm where gas burns"),
    QT_TRANSLATE_NOOP("ringhold::BeforeLighting", "The kiln's own over-temperature limiter set"),
    QT_TRANSLATE_NOOP("ringhold::BeforeLighting", "Infrared-rated eyewear at the spyhole"),
};

constexpr const char* caution = QT_TRANSLATE_NOOP(
    "ringhold::BeforeLighting",
    "Ringhold keeps a notebook. It controls nothing and is no safety device: limiter, wiring, gas and "
    "ventilation are for licensed trades and local codes. Choose eyewear with its supplier and to local "
    "rules. Never leave a firing alone.");

} // namespace

BeforeLighting::BeforeLighting(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_ownColumn(new QVBoxLayout),
      m_fresh(new FreshWhenSeen(notebook, *this, [this] { showOwn(); })) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    for (const char* line : usual) {
        m_usual.push_back(new QCheckBox(tr(line)));
        column->addWidget(m_usual.back());
    }
    column->addLayout(m_ownColumn);
    auto* words = new QLabel(tr(caution));
    words->setWordWrap(true);
    setTone(words, Tone::soft);
    column->addSpacing(8);
    column->addWidget(words);
}

void BeforeLighting::untick() {
    for (const auto* boxes : {&m_usual, &m_own})
        for (auto* box : *boxes)
            box->setChecked(false);
}

/// A line that is there already keeps its tick.
void BeforeLighting::showOwn() {
    const auto items = KilnCare(m_notebook.book()).checklist();
    QStringList ticked;
    for (auto* box : std::exchange(m_own, {})) {
        if (box->isChecked())
            ticked << box->text();
        delete box;
    }
    if (!items)
        return;
    for (const auto& item : *items) {
        if (item.kind != ChecklistKind::own)
            continue;
        auto* box =
            new QCheckBox(QString::fromStdString(item.words).replace(QLatin1Char('&'), QLatin1String("&&")));
        box->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed); // of any length
        box->setToolTip(QString::fromStdString(item.words));
        box->setChecked(ticked.contains(box->text()));
        m_ownColumn->addWidget(box);
        m_own.push_back(box);
    }
}

} // namespace ringhold
