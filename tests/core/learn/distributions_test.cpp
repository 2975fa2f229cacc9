#include "core/learn/distributions.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sf_gamma.h>
#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

TEST(Distributions, AgreeWithGsl) {
    for (const double freedom : {1.0, 2.0, 3.5, 10.0, 60.0, 400.0})
        for (const double t : {-40.0, -3.0, -0.2, 0.0, 0.7, 2.5, 12.0}) {
            EXPECT_NEAR(studentShareBelow(t, freedom), gsl_cdf_tdist_P(t, freedom), 1e-11)
                << t << " " << freedom;
            const double ratio = std::abs(t);
            EXPECT_NEAR(fShareAbove(ratio, 2, freedom), gsl_cdf_fdist_Q(ratio, 2, freedom), 1e-11);
        }
    for (const double share : {0.005, 0.05, 0.4, 0.5, 0.95, 0.9999}) {
        EXPECT_NEAR(normalQuantile(share), gsl_cdf_ugaussian_Pinv(share), 1e-10);
        for (const double freedom : {1.0, 4.0, 30.5})
            EXPECT_NEAR(studentQuantile(share, freedom), gsl_cdf_tdist_Pinv(share, freedom),
                        1e-7 * (1 + std::abs(gsl_cdf_tdist_Pinv(share, freedom))))
                << share << " " << freedom;
    }
    for (const double x : {0.0, 0.01, 0.3, 0.9, 1.0})
        EXPECT_NEAR(incompleteBeta(2.5, 40, x), gsl_sf_beta_inc(2.5, 40, x), 1e-12);
}

} // namespace
} // namespace ringhold
