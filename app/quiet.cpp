#include "app/quiet.h"

#include <QtGlobal>
#include <spdlog/sinks/null_sink.h>
#include <spdlog/spdlog.h>

#include <memory>

namespace ringhold {

void silenceLibraries() {
    qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
    spdlog::set_default_logger(
        std::make_shared<spdlog::logger>("ringhold", std::make_shared<spdlog::sinks::null_sink_mt>()));
}

} // namespace ringhold
