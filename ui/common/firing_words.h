// How a firing is called where several are listed.
#pragma once

#include <QString>

namespace ringhold {

struct Firing;
struct FiringSummary;
class Preferences;

/// Its title; "Firing 23" without one.
QString firingTitle(const FiringSummary& firing);
QString firingTitle(const Firing& firing);
/// "Frost fern · Heron · Sunday 1 March 2026", and whether it goes on now.
QString firingWords(const FiringSummary& firing, const Preferences& preferences);

} // namespace ringhold
