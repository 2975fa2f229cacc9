#include "ui/glaze/lesson_plot.h"

#include "ui/glaze/lesson_words.h"
#include "ui/plot/custom_plot.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"
#include "ui/ware/outcome_words.h"

#include <algorithm>

namespace ringhold {

LessonPlot::LessonPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : ThemedPlot(preferences, theme, parent), m_curve(plot()), m_pieces(plot().addGraph()) {
    m_pieces->setLineStyle(QCPGraph::lsNone);
    redress();
}

void LessonPlot::dress() {
    const auto& palette = theme().palette();
    m_curve.dress(palette.forecastWindow, QPen(palette.forecast, 2));
    m_pieces->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssCircle, palette.kiln, Qt::transparent, 7));
}

double LessonPlot::shown(double cause) const {
    const bool temperature = m_lesson.cause == Cause::growthHold || m_lesson.cause == Cause::peak;
    return temperature ? preferences().shown(Temperature::fromCelsius(cause)) : cause;
}

void LessonPlot::show(std::vector<PieceResult> pieces, Lesson lesson, Judged judged) {
    m_results = std::move(pieces);
    m_lesson = std::move(lesson);
    m_judged = judged;
    setAccessibleName(tr("%1 against %2").arg(judgedWords(judged), causeWords(m_lesson.cause)));
    setAccessibleDescription(lessonWords(m_lesson, judged, preferences()));
    draw();
}

void LessonPlot::drawPieces() {
    m_positions.clear();
    QVector<double> x, y;
    for (const auto& piece : m_results) {
        const auto outcome = judgedBy(piece, m_judged);
        auto cause = causeOf(piece, m_lesson.cause);
        if (m_lesson.cause == Cause::position && !piece.position.empty()) {
            auto found = std::ranges::find(m_positions, piece.position);
            cause = double(found - m_positions.begin());
            if (found == m_positions.end())
                m_positions.push_back(piece.position);
        }
        if (!outcome || !cause)
            continue;
        x << shown(*cause);
        y << *outcome;
    }
    m_points = static_cast<int>(x.size());
    m_pieces->setData(x, y);
}

void LessonPlot::drawCurve() {
    QVector<double> x, low, middle, high;
    for (const auto& at : m_lesson.curve) {
        x << shown(at.cause);
        low << at.low;
        middle << at.value;
        high << at.high;
    }
    m_curve.setBand(x, low, high);
    m_curve.setLine(x, middle);
}

void LessonPlot::nameAxes() {
    const bool temperature = m_lesson.cause == Cause::growthHold || m_lesson.cause == Cause::peak;
    const QString unit = temperature                            ? preferences().unitName()
                         : m_lesson.cause == Cause::holdTime    ? tr("h")
                         : m_lesson.cause == Cause::application ? tr("g/cm²")
                                                                : QString();
    plot().xAxis->setLabel(causeWords(m_lesson.cause) +
                           (unit.isEmpty() ? QString() : QStringLiteral(", ") + unit));
    plot().yAxis->setLabel(judgedWords(m_judged) + (m_judged == Judged::largest ? tr(", mm") : QString()));
    plot().xAxis->setNumberPrecision(m_lesson.cause == Cause::application ? 2
                                     : m_lesson.cause == Cause::holdTime  ? 1
                                                                          : 0);
    if (m_lesson.cause == Cause::position) {
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (std::size_t i = 0; i < m_positions.size(); ++i)
            ticks->addTick(double(i), QString::fromStdString(m_positions[i]));
        plot().xAxis->setTicker(ticks);
    } else {
        plot().xAxis->setTicker(QSharedPointer<QCPAxisTicker>(new QCPAxisTicker));
    }
    if (m_judged == Judged::crystals) {
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (const auto crystals : {Crystals::none, Crystals::few, Crystals::many, Crystals::covered})
            ticks->addTick(double(static_cast<int>(crystals)), crystalsWords(crystals));
        plot().yAxis->setTicker(ticks);
    } else {
        plot().yAxis->setTicker(QSharedPointer<QCPAxisTicker>(new QCPAxisTicker));
    }
}

void LessonPlot::draw() {
    drawPieces();
    drawCurve();
    nameAxes();
    plot().rescaleAxes();
    const auto widen = [](QCPAxis& axis, double least) {
        const auto range = axis.range();
        const double by = std::max(range.size() * 0.08, least);
        axis.setRange(range.lower - by, range.upper + by);
    };
    widen(*plot().xAxis, m_lesson.cause == Cause::application ? 0.005 : 0.4);
    widen(*plot().yAxis, 0.4);
    plot().replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
