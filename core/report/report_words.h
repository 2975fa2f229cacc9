// A report's figures as phrases and tables, not yet laid out.
#pragma once

#include "core/report/report_content.h"

#include <string>
#include <vector>

namespace ringhold {

/// Cells may have several lines, parted by '\n'. All rows are as long as the heads.
struct ReportTable {
    std::vector<std::string> heads;
    std::vector<std::vector<std::string>> rows;
    std::vector<bool> stressed; ///< by row: what the eye should find
};

/// "Firing 23, Heron"
std::string titleWords(const ReportContent& content);
/// "Sunday 1 March 2026, 09:00 to Monday 02:40 CET"; says so while the firing is open.
std::string datesWords(const ReportContent& content);
/// "Frost fern and lichen, 14 pieces · plan “Cone 10, three rings” · electric, 150 L, 71 kWh"
std::string summaryWords(const ReportContent& content);

/// cone, first lean, 3 o'clock, down; what only the model tells says so and has its interval.
ReportTable coneTable(const ReportedPack& pack, const WordStyle& style);
ReportTable holdTable(const ReportContent& content);
ReportTable ringTable(const ReportedRings& rings, const WordStyle& style);
ReportTable wareTable(const ReportContent& content);
/// Warnings and urgent alarms: raised, what, over, acknowledged when and by whom. Their evidence and the
/// notices are in the log.
ReportTable alarmTable(const ReportContent& content);

/// "about 31 mm across", then range with its source, then the rings.
std::vector<std::string> crystalWords(const ReportedCrystal& crystal);
/// Sentences beneath the holds: where the longest excursions lie in the crystal.
std::vector<std::string> holdRemarks(const ReportContent& content);
/// Small print: peak, forecast, offset, model, supply, readings.
std::vector<std::string> remarks(const ReportContent& content);
/// "The probe read 7 °C high (4 to 10) against the cones of the middle shelf, by 11 looks."
std::string offsetWords(const ReportedPack& pack, const WordStyle& style);

/// "An hour before, at 17:18, the forecast for cone 10 was 18:14 (18:02 to 18:31, 90 %); a look found it down
/// at 18:18."
std::string forecastWords(const ReportedForecast& forecast, const WordStyle& style);
/// "Filed for later firings: T1 reads 7 °C high (4 to 10, 90 %) against the cones of the middle shelf."
std::string filedWords(const ReportedFiled& filed, const WordStyle& style);

/// What the firing took and cost, a row for each way in which it is known.
ReportTable figureTable(const ReportContent& content);
/// "moon jar, 38 mm"
std::string photoWords(const ReportedPiece& piece);

std::string cautionWords(Caution caution, const WordStyle& style);

} // namespace ringhold
