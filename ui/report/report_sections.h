// The sections of a report as blocks for a page flow.
#pragma once

#include "ui/report/page_flow.h"

#include <vector>

namespace ringhold {

struct ReportContent;
struct ReportedCrystal;
struct ReportedPack;
struct WordStyle;

PageBlock headerBlock(const ReportContent& content, double width);
/// A section's heading, kept with what follows.
PageBlock headingBlock(const QString& words, double width);
/// A paragraph in small print.
PageBlock smallPrint(const QString& words, double width);

/// The pack drawn as it stands at the end of all that is known, with its table.
PageBlock packBlock(const ReportedPack& pack, const WordStyle& style, double width);
PageBlock crystalBlock(const ReportedCrystal& crystal, double width);

/// How closely a log is set.
enum class LogDensity { roomy, columns, columnsWithoutHandReadings };
void addLog(PageFlow& flow, const ReportContent& content, LogDensity density);

void addHolds(PageFlow& flow, const ReportContent& content);
void addRings(PageFlow& flow, const ReportContent& content);
void addUse(PageFlow& flow, const ReportContent& content);
void addAlarms(PageFlow& flow, const ReportContent& content);
void addWare(PageFlow& flow, const ReportContent& content);
/// One thumbnail of each piece that has a photo, and further ones while there are few.
void addPhotos(PageFlow& flow, const ReportContent& content);

} // namespace ringhold
