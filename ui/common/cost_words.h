// What a firing took and cost, in words.
#pragma once

#include "core/learn/firing_cost.h"

#include <QString>

namespace ringhold {

/// "22.01"; with a "+" behind it where something was used whose price is not known, empty without any.
QString costText(const FiringUse& use);
/// How an energy is known: "by the meter", "by the duty".
QString sourceWords(EnergySource source);
/// "71 kWh by the meter, 12.4 m³ of gas"; empty where neither is known.
QString useText(const FiringUse& use);
/// "71 kWh by the meter, cost 22.01, 1.83 a piece": shared by head; what is not known is left out.
QString costWords(const FiringUse& use, int pieces);

} // namespace ringhold
