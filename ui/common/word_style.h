// How core's phrases are to be told by the potter's preferences.
#pragma once

#include "core/report/words.h"
#include "ui/session/preferences.h"

namespace ringhold {

inline WordStyle styleOf(const Preferences& preferences) {
    return {preferences.unit() == TemperatureUnit::fahrenheit ? TemperatureScale::fahrenheit
                                                              : TemperatureScale::celsius,
            preferences.zone()};
}

} // namespace ringhold
