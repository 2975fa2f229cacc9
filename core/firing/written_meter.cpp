#include "core/firing/written_meter.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <string>
#include <utility>

namespace ringhold {

namespace {

std::string lowerWithoutBlanks(std::string_view text) {
    std::string plain;
    for (const char c : text)
        if (c != ' ' && c != '\t')
            plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return plain;
}

} // namespace

bool isMeter(const WrittenSetting& setting) {
    return lowerWithoutBlanks(setting.what) == "meter";
}

Result<WrittenMeter> readMeter(const WrittenSetting& setting, MeterUnit usual) {
    std::string text = lowerWithoutBlanks(setting.value);
    WrittenMeter meter{0, usual};
    for (const auto& [ending, unit] : {std::pair{"kwh", MeterUnit::kilowattHours},
                                       {"m³", MeterUnit::cubicMetres},
                                       {"m3", MeterUnit::cubicMetres}})
        if (text.ends_with(ending)) {
            text.erase(text.size() - std::string_view(ending).size());
            meter.unit = unit;
            break;
        }
    std::ranges::replace(text, ',', '.');
    const char* end = text.data() + text.size();
    const auto [read, error] = std::from_chars(text.data(), end, meter.stand);
    if (error != std::errc() || read != end || !std::isfinite(meter.stand) || meter.stand < 0)
        return Error{ErrorKind::badInput,
                     "a meter's stand is a number of at least 0, in kWh or m³: \"meter: 41234.5\""};
    return meter;
}

} // namespace ringhold
