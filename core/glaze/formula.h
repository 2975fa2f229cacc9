// Chemical formulas as potters write them for raw materials, and what they weigh.
#pragma once

#include "core/base/result.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace ringhold {

/// How many of each element, by symbol; above 0.
using ElementCounts = std::map<std::string, double, std::less<>>;

/// The standard atomic weight in g/mol, to five digits (IUPAC/CIAAW abridged values of 2021: Prohaska et al.,
/// Pure Appl. Chem. 94, 2022, 573). Nothing for elements that no glaze has.
std::optional<double> atomicWeight(std::string_view element);

/// Reads "ZnO", "Al2Si2O5(OH)4", "K2O·Al2O3·6SiO2", "Al2O3.2SiO2.2H2O", "0.7 Na2O + 0.3 CaO + 2.5 SiO2".
/// Parts are parted by a raised dot, a dot, comma, plus, asterisk or space; each may begin with its number of
/// moles, which may have decimals. A number behind an element or bracket is whole, or begins with "0.".
/// badInput says what could not be read.
Result<ElementCounts> parseFormula(std::string_view text);

/// g/mol.
double molarMass(const ElementCounts& counts);

} // namespace ringhold
