#include "core/cones/cone_table.h"

#include "core/base/tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <stdexcept>

namespace ringhold {

namespace {

using Cells = std::vector<std::string_view>;

Error badLine(const char* table, long line, const char* what) {
    return {ErrorKind::badInput, what, table, line};
}

std::optional<double> number(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size() ? std::optional(value) : std::nullopt;
}

std::optional<Basis> basisNamed(std::string_view text) {
    if (text == "read")
        return Basis::read;
    if (text == "memory")
        return Basis::memory;
    if (text == "read-weak")
        return Basis::readWeak;
    if (text == "study")
        return Basis::study;
    return std::nullopt;
}

/// The data rows of one of our own tables: no quoting, '#' begins a comment, the first row is the header.
std::vector<std::pair<long, Cells>> rowsOf(std::string_view text) {
    std::vector<std::pair<long, Cells>> rows;
    long line = 0;
    bool header = true;
    while (!text.empty()) {
        std::string_view row = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(text.size(), row.size() + 1));
        ++line;
        if (row.empty() || row.front() == '#')
            continue;
        if (std::exchange(header, false))
            continue;
        Cells cells;
        for (std::size_t comma = 0; comma != std::string_view::npos;
             row.remove_prefix(std::min(row.size(), comma + 1))) {
            comma = row.find(',');
            cells.push_back(row.substr(0, comma));
        }
        rows.emplace_back(line, std::move(cells));
    }
    return rows;
}

struct ConeKey {
    ConeType type;
    std::string name;
    auto operator<=>(const ConeKey&) const = default;
};

using EndPoints = std::map<ConeKey, std::vector<PublishedEndPoint>>;

Result<EndPoints> parseEndPoints(std::string_view text) {
    EndPoints points;
    for (const auto& [line, cells] : rowsOf(text)) {
        if (cells.size() != 5)
            return badLine("cones.csv", line, "five cells are wanted");
        const auto type = coneTypeNamed(cells[1]);
        const auto rate = number(cells[2]);
        const auto end = number(cells[3]);
        const auto basis = basisNamed(cells[4]);
        if (!type || !rate || !end || !basis || *rate <= 0)
            return badLine("cones.csv", line, "no such cone type, rate, end point or basis");
        points[{*type, std::string(cells[0])}].push_back(
            {{Rate::fromCelsiusPerHour(*rate), Temperature::fromCelsius(*end)}, *basis, {}});
    }
    for (auto& [key, list] : points)
        std::ranges::sort(list, {}, [](const PublishedEndPoint& p) { return p.point.climb; });
    return points;
}

std::vector<EndPoint> plain(const std::vector<PublishedEndPoint>& published) {
    std::vector<EndPoint> points;
    for (const auto& p : published)
        points.push_back(p.point);
    return points;
}

ConeType siblingOf(ConeType type) {
    return type == ConeType::largeIronFree ? ConeType::selfSupportingIronFree : ConeType::selfSupporting;
}

bool fitsAlone(ConeType type) {
    return type == ConeType::selfSupporting || type == ConeType::selfSupportingIronFree;
}

/// The law of one cone of the table, E from the cone itself or from its self-supporting sibling.
std::optional<ConeFit> fitOne(const EndPoints& all, const ConeKey& key) {
    const auto points = plain(all.at(key));
    if (fitsAlone(key.type))
        return fitCone(points);
    const auto sibling = all.find({siblingOf(key.type), key.name});
    if (sibling == all.end())
        return std::nullopt;
    const auto fitted = fitCone(plain(sibling->second));
    return fitted ? fitConeWithActivation(points, fitted->law.activation_J_per_mol()) : std::nullopt;
}

} // namespace

TemperatureDifference Cone::modelSd() const {
    if (published.size() < 3)
        return TemperatureDifference::fromCelsius(3.0);
    double squares = 0;
    for (const auto& p : published)
        squares += p.residual.celsius() * p.residual.celsius();
    const double freedom = static_cast<double>(published.size()) - 2;
    return TemperatureDifference::fromCelsius(std::max(1.5, std::sqrt(squares / freedom)));
}

TemperatureDifference Cone::worstResidual() const {
    double worst = 0;
    for (const auto& p : published)
        worst = std::max(worst, std::abs(p.residual.celsius()));
    return TemperatureDifference::fromCelsius(worst);
}

Result<ConeTable> ConeTable::parse(std::string_view endPoints, std::string_view fits) {
    auto points = parseEndPoints(endPoints);
    if (!points)
        return points.error();
    ConeTable table;
    for (const auto& [line, cells] : rowsOf(fits)) {
        if (cells.size() != 5)
            return badLine("cone_fit.csv", line, "five cells are wanted");
        const auto type = coneTypeNamed(cells[1]);
        const auto activation_kJ = number(cells[2]);
        const auto log10A = number(cells[3]);
        if (!type || !activation_kJ || !log10A)
            return badLine("cone_fit.csv", line, "no such cone type, or not a number");
        const auto published = points->find({*type, std::string(cells[0])});
        if (published == points->end())
            return badLine("cone_fit.csv", line, "this cone has no published end point");
        Cone cone{std::string(cells[0]),
                  *type,
                  {*activation_kJ * 1e3, *log10A * std::log(10.0)},
                  cells[4] == "own" ? ActivationSource::ownRates : ActivationSource::sibling,
                  published->second};
        for (auto& p : cone.published)
            p.residual = cone.law.endPoint(p.point.climb) - p.point.end;
        table.m_cones.push_back(std::move(cone));
    }
    std::ranges::stable_sort(table.m_cones, {}, [](const Cone& c) { return c.published.front().point.end; });
    return table;
}

const ConeTable& ConeTable::builtIn() {
    static const ConeTable table = [] {
        auto parsed = parse(tables::cones, tables::cone_fit);
        if (!parsed)
            throw std::logic_error(
                parsed.error().text()); // the build is broken; a test parses the same texts
        return std::move(parsed).value();
    }();
    return table;
}

const Cone* ConeTable::find(std::string_view coneName, ConeType type) const {
    const auto found =
        std::ranges::find_if(m_cones, [&](const Cone& c) { return c.type == type && c.name == coneName; });
    return found == m_cones.end() ? nullptr : &*found;
}

std::vector<const Cone*> ConeTable::series(ConeType type) const {
    std::vector<const Cone*> cones;
    for (const auto& cone : m_cones)
        if (cone.type == type)
            cones.push_back(&cone);
    return cones;
}

Result<std::string> fitConeTable(std::string_view endPoints) {
    const auto points = parseEndPoints(endPoints);
    if (!points)
        return points.error();
    std::string text = "cone,type,E_kJ_per_mol,log10A_per_s,E_from\n";
    for (const auto& [key, published] : *points)
        if (const auto fit = fitOne(*points, key))
            text += fmt::format("{},{},{:.4f},{:.7f},{}\n", key.name, name(key.type),
                                fit->law.activation_J_per_mol() / 1e3, fit->law.lnA_per_s() / std::log(10.0),
                                fitsAlone(key.type) ? "own" : "sibling");
    return text;
}

} // namespace ringhold
