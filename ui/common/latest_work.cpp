#include "ui/common/latest_work.h"

#include <QMetaObject>

namespace ringhold {

LatestWork::LatestWork(QObject* parent) : QObject(parent) {
    m_pool.setMaxThreadCount(1);
}

LatestWork::~LatestWork() {
    m_pool.clear();
    m_pool.waitForDone();
}

void LatestWork::begin(std::function<std::function<void()>()> work) {
    m_pool.clear();
    m_pool.start([this, asked = ++m_asked, work = std::move(work)] {
        auto finish = work();
        QMetaObject::invokeMethod(
            this,
            [this, asked, finish = std::move(finish)] {
                if (asked != m_asked)
                    return;
                m_answered = asked;
                finish();
            },
            Qt::QueuedConnection);
    });
}

} // namespace ringhold
