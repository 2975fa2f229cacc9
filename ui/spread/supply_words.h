// Volts, amps, power and oxygen as they are now, and the energy so far and to come, in words.
#pragma once

#include "core/watch/energy_meter.h"

#include <QString>

#include <vector>

namespace ringhold {

class FiringSession;
class Preferences;

/// One channel's newest value.
struct SupplyField {
    QString name;     ///< "volts", with the channel's label where there are several of a kind
    QString value;    ///< "231 V"
    QString age;      ///< "12 s ago"
    bool live = true; ///< not older than twice its own sample period
};

struct SupplyWords {
    std::vector<SupplyField> fields; ///< those that have a value, in the order of the channels
    QString evidence;                ///< what fewer volts than usual come to; empty while there are enough
    QString energy;                  ///< "12.4 kWh so far (4.34) · about 31 kWh to come by the model …"

    bool empty() const { return fields.empty() && energy.isEmpty(); }
};

SupplyWords supplyWords(const FiringSession& session, const Preferences& preferences,
                        const FiringEnergy& energy);
/// In one line, for a screen reader.
QString spokenWords(const SupplyWords& words);

} // namespace ringhold
