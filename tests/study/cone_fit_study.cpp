// Refits the heat-work law to the published end points and prints the fit table that ships as
// resources/tables/cone_fit.csv, then, on standard error, how well it holds.
#include "core/base/tables.h"
#include "core/cones/cone_table.h"

#include <cmath>
#include <cstdio>

int main() {
    using namespace ringhold;
    const auto fits = fitConeTable(tables::cones);
    if (!fits) {
        std::fprintf(stderr, "%s\n", fits.error().text().c_str());
        return 1;
    }
    std::printf("# The heat-work law fitted to cones.csv by least squares on the temperatures, with exact "
                "integration; made by "
                "tests/study/cone_fit_study.\n%s",
                fits->c_str());
    const auto table = ConeTable::parse(tables::cones, *fits);
    int values = 0;
    int within3 = 0;
    double squares = 0;
    for (const Cone* cone : table->series(ConeType::selfSupporting)) {
        if (cone->published.size() < 3)
            continue;
        std::fprintf(stderr, "cone %-4s E %6.1f kJ/mol  residuals", cone->name.c_str(),
                     cone->law.activation_J_per_mol() / 1e3);
        for (const auto& p : cone->published) {
            const double residual_C = p.residual.celsius();
            std::fprintf(stderr, " %+5.1f", residual_C);
            ++values;
            within3 += std::abs(residual_C) <= 3.0;
            squares += residual_C * residual_C;
        }
        std::fprintf(stderr, " °C\n");
    }
    std::fprintf(stderr, "%d values, rms %.2f °C, %d within 3 °C\n", values, std::sqrt(squares / values),
                 within3);
    return 0;
}
