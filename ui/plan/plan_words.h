// The translation context of the plan page's free functions.
#pragma once

#include <QCoreApplication>

namespace ringhold {

struct PlanWords {
    Q_DECLARE_TR_FUNCTIONS(PlanWords)
};

} // namespace ringhold
