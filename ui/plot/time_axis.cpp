#include "ui/plot/time_axis.h"

#include "ui/plot/custom_plot.h"
#include "ui/plot/time_ticks.h"

#include <QFontMetrics>

namespace ringhold {

namespace {

/// Ticks with their labels, from a function of the range and of how many have room.
class Ticker : public QCPAxisTicker {
  public:
    struct Tick {
        double place;
        QString label;
    };
    using Maker = std::function<std::vector<Tick>(const QCPRange& range, int most)>;

    Ticker(const QCPAxis& axis, Maker maker) : m_axis(axis), m_maker(std::move(maker)) {}

    void generate(const QCPRange& range, const QLocale&, QChar, int, QVector<double>& ticks,
                  QVector<double>* subTicks, QVector<QString>* labels) override {
        ticks.clear();
        if (subTicks)
            subTicks->clear();
        if (labels)
            labels->clear();
        for (const auto& tick : m_maker(range, most())) {
            ticks.append(tick.place);
            if (labels)
                labels->append(tick.label);
        }
    }

  private:
    int most() const {
        const int label =
            QFontMetrics(m_axis.tickLabelFont()).horizontalAdvance(QStringLiteral("Sun 10 Mar M"));
        return std::max(2, m_axis.axisRect()->width() / std::max(label, 1));
    }

    const QCPAxis& m_axis; ///< which owns this
    Maker m_maker;
};

std::vector<Ticker::Tick> timesOfDay(const QCPRange& range, const std::string& zone, int most) {
    std::vector<Ticker::Tick> ticks;
    for (const auto& tick : timeTicks(fromAxis(range.lower), fromAxis(range.upper), zone, most))
        ticks.push_back(
            {onAxis(tick.at), tick.day.isEmpty() ? tick.label : tick.label + QLatin1Char('\n') + tick.day});
    return ticks;
}

std::vector<Ticker::Tick> hours(const QCPRange& range, int most) {
    std::vector<Ticker::Tick> ticks;
    for (const auto& tick : hourTicks(range.lower, range.upper, most))
        ticks.push_back({tick.hours, tick.label});
    return ticks;
}

} // namespace

void showTimesOfDay(QCPAxis& axis, const std::string& zone) {
    axis.setTicker(QSharedPointer<Ticker>::create(
        axis, [zone](const QCPRange& range, int most) { return timesOfDay(range, zone, most); }));
}

void showHours(QCPAxis& axis) {
    axis.setTicker(QSharedPointer<Ticker>::create(axis, hours));
}

} // namespace ringhold
