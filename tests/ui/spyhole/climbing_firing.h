// A firing on its way to cone 10, with the real forecaster behind the spyhole's model.
#pragma once

#include "core/watch/firing_forecast.h"
#include "ui/spyhole/spyhole_model.h"

namespace ringhold {

/// 60 °C/h from 1100 °C at 15:33 UTC, read every 2 min up to 1250 °C at 18:03. The middle shelf has cones 9,
/// 10 and 11; the bottom shelf 8 and 9, and leans left. A look at 17:43 saw 9 at 1 o'clock on the middle
/// shelf.
class ClimbingFiring {
  public:
    static Instant clock(const std::string& time) { return *parseIso8601("2026-03-01T" + time + "Z"); }

    static const std::vector<Pack>& packs() {
        static const std::vector<Pack> packs{
            {PackId{1}, FiringId{1}, "middle shelf", ConeType::selfSupporting, {"9", "10", "11"}, false},
            {PackId{2}, FiringId{1}, "bottom shelf", ConeType::selfSupporting, {"8", "9"}, true}};
        return packs;
    }
    static const std::vector<Look>& looks() {
        static const std::vector<Look> looks{{LookId{1}, PackId{1}, clock("17:43"), "9", 1}};
        return looks;
    }

    SpyholeModel::Outside outside() {
        return {[](const std::vector<Look>& added) { return preview(added); }, [this] { return m_now; },
                [this](const Look& look) { return write(look); }, [] { return WordStyle{}; }};
    }

    static Result<LookPreview> preview(const std::vector<Look>& added) {
        static const FiringForecast forecaster = followed();
        static const Forecast without = *forecaster.forecast(nullptr);
        if (added.empty())
            return LookPreview{without, without};
        const auto with = forecaster.forecastWith(added, nullptr);
        if (!with.ok())
            return with.error();
        return LookPreview{without, *with};
    }

    Status write(const Look& look) {
        if (m_written.size() >= m_roomOnDisk)
            return Error{ErrorKind::unwritable, "the disk is full"};
        m_written.push_back(look);
        return {};
    }

    std::vector<Look> m_written;
    Instant m_now = clock("18:03");
    std::size_t m_roomOnDisk = 100;

  private:
    static FiringForecast followed() {
        const OffsetPrior prior{{}, TemperatureDifference::fromCelsius(10)};
        auto forecaster = *FiringForecast::make(packs(), {prior, prior});
        Curve curve;
        for (int minute = 0; minute <= 150; minute += 2)
            curve.push_back(
                {clock("15:33") + std::chrono::minutes(minute), Temperature::fromCelsius(1100.0 + minute)});
        EXPECT_TRUE(forecaster.restart(curve, clock("15:33"), looks()).ok());
        return forecaster;
    }
};

} // namespace ringhold
