#include "ui/common/fresh_when_seen.h"

#include "ui/session/notebook.h"

#include <QEvent>
#include <QWidget>

namespace ringhold {

FreshWhenSeen::FreshWhenSeen(Notebook& notebook, QWidget& page, std::function<void()> refresh)
    : QObject(&page), m_notebook(notebook), m_page(page), m_refresh(std::move(refresh)) {
    page.installEventFilter(this);
    connect(&notebook, &Notebook::bookChanged, this, &FreshWhenSeen::changed);
    connect(&notebook.preferences(), &Preferences::changed, this, &FreshWhenSeen::changed);
}

void FreshWhenSeen::tellOthers() {
    m_telling = true;
    Q_EMIT m_notebook.bookChanged();
    m_telling = false;
}

bool FreshWhenSeen::eventFilter(QObject* watched, QEvent* event) {
    if (watched == &m_page && event->type() == QEvent::Show)
        refresh();
    return QObject::eventFilter(watched, event);
}

void FreshWhenSeen::changed() {
    if (m_telling)
        return;
    m_stale = true;
    if (m_page.isVisible())
        refresh();
}

void FreshWhenSeen::refresh() {
    if (!m_stale)
        return;
    m_stale = false;
    m_refresh();
}

} // namespace ringhold
