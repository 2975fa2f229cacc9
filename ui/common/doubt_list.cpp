#include "ui/common/doubt_list.h"

#include "ui/common/forecast_words.h"
#include "ui/common/tone.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

DoubtList::DoubtList(FiringSession& session, const Preferences& preferences, QWidget* parent)
    : QWidget(parent), m_session(session), m_preferences(preferences), m_lines(new QVBoxLayout(this)) {
    setAccessibleName(tr("Looks that do not fit"));
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(6);
    connect(&session, &FiringSession::forecastChanged, this, &DoubtList::refresh);
    connect(&preferences, &Preferences::changed, this, &DoubtList::refresh);
    refresh();
}

void DoubtList::addLine(LookId look) {
    Line line{look, new QFrame, new QLabel, new QPushButton(tr("Strike it out"))};
    line.frame->setProperty("ground", QStringLiteral("warning"));
    auto* row = new QHBoxLayout(line.frame);
    row->setContentsMargins(12, 6, 8, 6);
    row->setSpacing(12);
    line.words->setWordWrap(true);
    setTone(line.words, Tone::warning);
    line.strike->setAutoDefault(false);
    connect(line.strike, &QPushButton::clicked, this, [this, look] {
        if (const auto done = m_session.firing().strike(look, m_session.now()); !done)
            Q_EMIT troubled(QString::fromStdString(done.error().text()));
    });
    row->addWidget(line.words, 1);
    row->addWidget(line.strike, 0, Qt::AlignVCenter);
    m_lines->addWidget(line.frame);
    m_shown.push_back(line);
}

void DoubtList::refresh() {
    const auto& doubts = m_session.lookDoubts();
    const bool same = std::ranges::equal(
        doubts, m_shown, {}, [](const LookDoubt& d) { return d.look.id; }, &Line::look);
    if (!same) {
        for (const auto& line : m_shown) {
            m_lines->removeWidget(line.frame);
            line.frame->hide();
            line.frame->deleteLater(); // it may be its own button that struck the look
        }
        m_shown.clear();
        for (const auto& doubt : doubts)
            addLine(doubt.look.id);
    }
    for (std::size_t i = 0; i < doubts.size(); ++i) {
        const QString words = doubtInFull(doubts[i], firingConeForecast(m_session), m_preferences);
        m_shown[i].words->setText(words);
        m_shown[i].strike->setAccessibleDescription(words);
    }
    setVisible(!doubts.empty());
}

} // namespace ringhold
