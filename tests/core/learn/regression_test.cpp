#include "core/learn/distributions.h"
#include "core/learn/regression.h"
#include "tests/support/places.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_multifit.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

namespace ringhold {
namespace {

struct Data {
    std::vector<double> y;
    std::vector<std::vector<double>> x;
};

Data read(const std::string& name) {
    std::ifstream in(test::sourceFolder() / "tests/reference" / name);
    Data data;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#' || line[0] == 'y')
            continue;
        std::istringstream cells(line);
        std::vector<double> values;
        for (std::string cell; std::getline(cells, cell, ',');)
            values.push_back(std::stod(cell));
        data.y.push_back(values.front());
        data.x.emplace_back(values.begin() + 1, values.end());
    }
    return data;
}

std::vector<RegressionRow> rowsOf(const Data& data, int degree) {
    std::vector<RegressionRow> rows;
    for (const auto& x : data.x) {
        RegressionRow row = powers(x.front(), x.size() == 1 ? degree : 1);
        row.insert(row.end(), x.begin() + 1, x.end());
        rows.push_back(row);
    }
    return rows;
}

struct Certified {
    const char* file;
    std::size_t observations;
    int degree;
    std::vector<Estimate> coefficients;
    double residualSd;
    double rSquared;
    double tolerance; ///< relative
};

class Strd : public testing::TestWithParam<Certified> {};

TEST_P(Strd, HasCertifiedValues) {
    const auto& want = GetParam();
    const Data data = read(want.file);
    ASSERT_EQ(data.y.size(), want.observations);
    const auto fit = fitLinear(rowsOf(data, want.degree), data.y);
    ASSERT_TRUE(fit) << fit.error().text();
    ASSERT_EQ(fit->size(), want.coefficients.size());
    for (std::size_t i = 0; i < fit->size(); ++i) {
        const auto [value, sd] = want.coefficients[i];
        EXPECT_NEAR(fit->coefficient(i).value, value, std::abs(value) * want.tolerance) << i;
        EXPECT_NEAR(fit->coefficient(i).sd, sd, sd * want.tolerance) << i;
    }
    EXPECT_NEAR(fit->residualSd(), want.residualSd, want.residualSd * want.tolerance);
    EXPECT_NEAR(fit->rSquared(), want.rSquared, 1e-12);
}

// Certified values of the NIST Statistical Reference Datasets, from the files that tests/reference names;
// data and values as two independent copies give them.
INSTANTIATE_TEST_SUITE_P(Nist, Strd,
                         testing::Values(Certified{"strd_norris.csv",
                                                   36,
                                                   1,
                                                   {{-0.262323073774029, 0.232818234301152},
                                                    {1.00211681802045, 0.429796848199937e-3}},
                                                   0.884796396144373,
                                                   0.999993745883712,
                                                   1e-12},
                                         Certified{"strd_pontius.csv",
                                                   40,
                                                   2,
                                                   {{0.673565789473684e-3, 0.107938612033077e-3},
                                                    {0.732059160401003e-6, 0.157817399981659e-9},
                                                    {-0.316081871345029e-14, 0.486652849992036e-16}},
                                                   0.205177424076185e-3,
                                                   0.999999900178537,
                                                   1e-11},
                                         Certified{"strd_longley.csv",
                                                   16,
                                                   1,
                                                   {{-3482258.63459582, 890420.383607373},
                                                    {15.0618722713733, 84.9149257747669},
                                                    {-0.358191792925910e-1, 0.334910077722432e-1},
                                                    {-2.02022980381683, 0.488399681651699},
                                                    {-1.03322686717359, 0.214274163161675},
                                                    {-0.511041056535807e-1, 0.226073200069370},
                                                    {1829.15146461355, 455.478499142212}},
                                                   304.854073561965,
                                                   0.995479004577296,
                                                   1e-8}));

TEST(Regression, WeightedAgreesWithGsl) {
    const std::vector<double> x{1, 2, 3.5, 4, 6, 7, 9, 11};
    const std::vector<double> y{2.1, 2.9, 5.2, 4.8, 7.7, 8.1, 9.4, 9.9};
    const std::vector<double> weights{1, 2, 1, 0.5, 3, 1, 1, 0.25};
    gsl_matrix* rows = gsl_matrix_alloc(x.size(), 3);
    gsl_matrix* covariance = gsl_matrix_alloc(3, 3);
    gsl_vector* solved = gsl_vector_alloc(3);
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = 0; j < 3; ++j)
            gsl_matrix_set(rows, i, j, std::pow(x[i], double(j)));
    const auto yView = gsl_vector_const_view_array(y.data(), y.size());
    const auto wView = gsl_vector_const_view_array(weights.data(), weights.size());
    double squares = 0;
    auto* work = gsl_multifit_linear_alloc(x.size(), 3);
    gsl_multifit_wlinear(rows, &wView.vector, &yView.vector, solved, covariance, &squares, work);

    const auto fit = fitPolynomial(x, y, 2, weights).value();
    EXPECT_NEAR(fit.residualSquares(), squares, 1e-12);
    const double scale = squares / 5; // GSL's covariance takes the weights for one over variances
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_NEAR(fit.coefficients()[i], gsl_vector_get(solved, i), 1e-12);
        for (std::size_t j = 0; j < 3; ++j)
            EXPECT_NEAR(fit.covariance(i, j), scale * gsl_matrix_get(covariance, i, j), 1e-12);
    }
    double value = 0, sd = 0;
    gsl_vector* at = gsl_vector_alloc(3);
    for (std::size_t j = 0; j < 3; ++j)
        gsl_vector_set(at, j, std::pow(5.0, double(j)));
    gsl_multifit_linear_est(at, solved, covariance, &value, &sd);
    const Estimate curve = fit.at(powers(5, 2));
    EXPECT_NEAR(curve.value, value, 1e-12);
    EXPECT_NEAR(curve.sd, sd * std::sqrt(scale), 1e-12);
    EXPECT_NEAR(fit.nextAt(powers(5, 2)).sd, std::hypot(curve.sd, fit.residualSd()), 1e-12);
    EXPECT_NEAR(fit.halfWidthFactor(0.9), gsl_cdf_tdist_Pinv(0.95, 5), 1e-9);

    gsl_multifit_linear_free(work);
    gsl_vector_free(at);
    gsl_vector_free(solved);
    gsl_matrix_free(covariance);
    gsl_matrix_free(rows);
}

TEST(Regression, RefusesWhatCannotBeFitted) {
    const std::vector<double> two{1, 2}, four{1, 2, 3, 4}, same{5, 5, 5, 5};
    EXPECT_FALSE(fitPolynomial(two, two, 1)) << "no degree of freedom left";
    EXPECT_FALSE(fitPolynomial(four, two, 1));
    EXPECT_FALSE(fitPolynomial(same, four, 1)) << "all at one x";
    EXPECT_FALSE(fitPolynomial(four, std::vector<double>{1, 2, NAN, 4}, 1));
    EXPECT_FALSE(fitPolynomial(four, four, 1, std::vector<double>{1, 1, 0, 1}));
    const auto exact = fitPolynomial(four, four, 1);
    ASSERT_TRUE(exact);
    EXPECT_NEAR(exact->residualSd(), 0, 1e-12);
}

} // namespace
} // namespace ringhold
