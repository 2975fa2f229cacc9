// Keeps a page as the book is, without work while nobody sees it.
#pragma once

#include <QObject>

#include <functional>

class QWidget;

namespace ringhold {

class Notebook;

/// Calls `refresh` when the book or a preference changed: at once while the page is in sight, else when it
/// next comes in sight, as it does the first time.
class FreshWhenSeen : public QObject {
  public:
    /// Child of the page.
    FreshWhenSeen(Notebook& notebook, QWidget& page, std::function<void()> refresh);

    /// For a page that wrote to the book and shows it already: tells the other pages.
    void tellOthers();

  private:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changed();
    void refresh();

    Notebook& m_notebook;
    QWidget& m_page;
    std::function<void()> m_refresh;
    bool m_stale = true;
    bool m_telling = false;
};

} // namespace ringhold
