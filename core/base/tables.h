// The data tables that are built into the program; the files are in resources/tables.
#pragma once

#include <string_view>

namespace ringhold::tables {

/// Published end points of cones: cone,type,rate_C_per_h,end_point_C,basis. Source in its first lines.
extern const std::string_view cones;
/// Parameters of the heat-work law fitted to them: see core/cones/cone_table.h.
extern const std::string_view cone_fit;

} // namespace ringhold::tables
