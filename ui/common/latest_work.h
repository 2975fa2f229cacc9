// Work that must not hold the window up.
#pragma once

#include <QObject>
#include <QThreadPool>

#include <functional>
#include <memory>

namespace ringhold {

/// Does one piece of work after another in a thread of its own; of several that were asked for only the last
/// one's result is handed back. Used from the window's thread; its end waits for what is being done.
class LatestWork : public QObject {
  public:
    explicit LatestWork(QObject* parent = nullptr);
    ~LatestWork() override;

    /// `work` runs in the other thread and must share nothing with this one; `done` is called with its result
    /// in the window's thread, unless something else was asked for meanwhile.
    template <class Work, class Done>
    void ask(Work work, Done done) {
        begin([work = std::move(work), done = std::move(done)]() -> std::function<void()> {
            auto result = std::make_shared<decltype(work())>(work());
            return [result, done] { done(*result); };
        });
    }
    /// What was asked for is no longer wanted.
    void forget() { m_answered = ++m_asked; }
    bool busy() const { return m_answered != m_asked; }

  private:
    void begin(std::function<std::function<void()>()> work);

    QThreadPool m_pool;
    int m_asked = 0;
    int m_answered = 0;
};

} // namespace ringhold
