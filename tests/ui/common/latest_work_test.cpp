#include "ui/common/latest_work.h"

#include <QTest>
#include <QThread>
#include <gtest/gtest.h>

#include <atomic>
#include <memory>
#include <vector>

namespace ringhold {
namespace {

TEST(LatestWorkTest, HandsBackTheLastResultInTheAskersThread) {
    LatestWork work;
    std::vector<int> results;
    Qt::HANDLE workedIn = nullptr, toldIn = nullptr;
    for (const int asked : {1, 2, 3})
        work.ask(
            [asked, &workedIn] {
                workedIn = QThread::currentThreadId();
                return asked;
            },
            [&](int result) {
                toldIn = QThread::currentThreadId();
                results.push_back(result);
            });
    EXPECT_TRUE(work.busy());
    ASSERT_TRUE(QTest::qWaitFor([&work] { return !work.busy(); }));
    EXPECT_EQ(results, std::vector<int>{3});
    EXPECT_EQ(toldIn, QThread::currentThreadId());
    EXPECT_NE(workedIn, toldIn);
}

TEST(LatestWorkTest, ForgetsAndMayEndWhileItWorks) {
    std::atomic<int> told{0};
    {
        LatestWork work;
        work.ask([] { return 1; }, [&told](int) { ++told; });
        work.forget();
        EXPECT_FALSE(work.busy());
        QTest::qWait(50);
        work.ask(
            [] {
                QThread::msleep(50);
                return 2;
            },
            [&told](int) { ++told; });
    }
    QTest::qWait(20);
    EXPECT_EQ(told, 0);
}

} // namespace
} // namespace ringhold
