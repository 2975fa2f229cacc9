#include "ui/common/choice_row.h"

#include <QEvent>
#include <QFontMetrics>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QToolButton>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int room = 20; ///< left and right of a button's text: padding, frame, margin
constexpr int slimRoom = 8;

} // namespace

ChoiceRow::ChoiceRow(const QString& accessibleName, const std::vector<Choice>& choices, QWidget* parent)
    : QWidget(parent) {
    setAccessibleName(accessibleName);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    for (const auto& choice : choices) {
        const int index = count();
        auto* button = new QToolButton;
        button->setText(choice.text);
        button->setAccessibleName(choice.spoken.isEmpty() ? choice.text : choice.spoken);
        button->setCheckable(true);
        button->setProperty("choice", true);
        button->setProperty("slim", choice.slim);
        button->installEventFilter(this);
        connect(button, &QToolButton::clicked, this, [this, index] { clicked(index); });
        row->addWidget(button);
        m_buttons.push_back(button);
    }
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    setCurrent(std::nullopt);
}

void ChoiceRow::setCurrent(std::optional<int> index) {
    m_current = index;
    for (int i = 0; i < count(); ++i) {
        button(i)->setChecked(i == index);
        button(i)->setFocusPolicy(i == index.value_or(0) ? Qt::StrongFocus : Qt::ClickFocus);
    }
}

void ChoiceRow::choose(std::optional<int> index) {
    setCurrent(index);
    Q_EMIT chosen(index);
}

void ChoiceRow::clicked(int index) {
    if (index != m_current)
        choose(index);
    else if (m_mayBeNone)
        choose(std::nullopt);
    else
        setCurrent(index); // Qt has unchecked it
}

bool ChoiceRow::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Up || key == Qt::Key_Down) { // the owner's: a button would go to its neighbour
            event->ignore();
            return true;
        }
        const auto from = std::ranges::find(m_buttons, watched) - m_buttons.begin();
        if (goBy(key, static_cast<int>(from)))
            return true;
    }
    return QWidget::eventFilter(watched, event);
}

bool ChoiceRow::goBy(int key, int from) {
    int to = from;
    if (key == Qt::Key_Left)
        to = from - 1;
    else if (key == Qt::Key_Right)
        to = m_current ? from + 1 : from; // the first is chosen where none was
    else if (key == Qt::Key_Home)
        to = 0;
    else if (key == Qt::Key_End)
        to = count() - 1;
    else
        return false;
    to = std::clamp(to, 0, count() - 1);
    button(to)->setFocus(Qt::OtherFocusReason);
    if (to != m_current)
        choose(to);
    return true;
}

/// So that the row does not shift when another is chosen.
void ChoiceRow::makeRoomForBold() {
    for (auto* button : m_buttons) {
        QFont bold = button->font();
        bold.setBold(true);
        const bool slim = button->property("slim").toBool();
        button->setMinimumWidth(QFontMetrics(bold).size(0, button->text()).width() +
                                (slim ? slimRoom : room));
    }
}

void ChoiceRow::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        makeRoomForBold();
}

void ChoiceRow::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    makeRoomForBold();
}

} // namespace ringhold
