// The translation context of what the report's page says of itself; its phrases come from core.
#pragma once

#include <QCoreApplication>

namespace ringhold {

struct ReportTalk {
    Q_DECLARE_TR_FUNCTIONS(Report)
};

} // namespace ringhold
