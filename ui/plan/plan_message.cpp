#include "ui/plan/plan_message.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>

namespace ringhold {

PlanMessage::PlanMessage(QWidget* parent)
    : QFrame(parent), m_words(new QLabel(this)), m_act(new QPushButton(this)) {
    setObjectName(QStringLiteral("planMessage"));
    m_words->setWordWrap(true);
    m_act->setAccessibleName(tr("What can be done about it"));
    m_words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_act->setObjectName(QStringLiteral("planMessageAct"));
    auto* close = new QPushButton(tr("Close"), this);
    close->setObjectName(QStringLiteral("planMessageClose"));
    close->setAccessibleName(tr("Close the message"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_words, 1);
    row->addWidget(m_act);
    row->addWidget(close);
    connect(close, &QPushButton::clicked, this, &PlanMessage::dismiss);
    connect(m_act, &QPushButton::clicked, this, [this] {
        const auto what = m_what;
        dismiss();
        what();
    });
    hide();
}

void PlanMessage::say(Tone tone, const QString& words, const QString& button, std::function<void()> act) {
    m_words->setProperty("ground",
                         tone == Tone::warning ? QStringLiteral("warning") : QStringLiteral("forecast"));
    m_words->style()->unpolish(m_words);
    m_words->style()->polish(m_words);
    m_words->setText(words);
    m_act->setText(button);
    m_act->setVisible(!button.isEmpty());
    m_what = std::move(act);
    setAccessibleName(words);
    show();
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void PlanMessage::dismiss() {
    m_what = {};
    hide();
}

QString PlanMessage::words() const {
    return isHidden() ? QString() : m_words->text();
}

} // namespace ringhold
