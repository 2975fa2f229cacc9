// The words in which an outcome is told and typed.
#pragma once

#include "core/firing/records.h"

#include <QString>
#include <QStringList>

namespace ringhold {

/// "none", "few", "many", "covered".
QString crystalsWords(Crystals crystals);
/// "crawled", "too many seeds".
QString faultWords(WareFault fault);
/// Those with a common word.
QStringList allFaultWords();

/// "pinholes, dull, a chip at the rim": the common ones first.
QString faultsText(const Outcome& outcome);
/// Common words, whole or so much of one that no other begins so, become known faults; the rest is kept as
/// written.
void putFaults(const QString& text, Outcome& outcome);

/// "to the foot, 3 mm".
QString runOffText(const Outcome& outcome);
/// Words, a number of mm at the end, or both. False when the number is no run-off.
bool putRunOff(const QString& text, Outcome& outcome);

/// Whether anything is known of what came out.
bool isJudged(const Outcome& outcome);

} // namespace ringhold
