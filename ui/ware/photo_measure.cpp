#include "ui/ware/photo_measure.h"

#include <cmath>

namespace ringhold {

namespace {

constexpr double shortestKnown_px = 20;

/// Of a distance between two marks, each off by that much along the line.
double relativeVariance(double distance_px, double mark_px) {
    return 2 * mark_px * mark_px / (distance_px * distance_px);
}

} // namespace

std::optional<QPointF> PhotoMarks::at(PhotoMark mark) const {
    const auto index = static_cast<std::size_t>(mark);
    return index < m_marks.size() ? std::optional(m_marks[index]) : std::nullopt;
}

std::optional<PhotoMark> PhotoMarks::next() const {
    return complete() ? std::nullopt : std::optional(static_cast<PhotoMark>(count()));
}

void PhotoMarks::add(QPointF where) {
    if (!complete())
        m_marks.push_back(where);
}

void PhotoMarks::move(PhotoMark mark, QPointF where) {
    if (at(mark))
        m_marks[static_cast<std::size_t>(mark)] = where;
}

void PhotoMarks::takeBack() {
    if (!m_marks.empty())
        m_marks.pop_back();
}

std::optional<PhotoMark> PhotoMarks::near(QPointF where, double within) const {
    std::optional<PhotoMark> nearest;
    for (std::size_t i = 0; i < m_marks.size(); ++i)
        if (const double distance = QLineF(where, m_marks[i]).length(); distance <= within) {
            within = distance;
            nearest = static_cast<PhotoMark>(i);
        }
    return nearest;
}

std::optional<QLineF> PhotoMarks::known() const {
    return count() < 2 ? std::nullopt : std::optional(QLineF(m_marks[0], m_marks[1]));
}

std::optional<QLineF> PhotoMarks::crystal() const {
    return complete() ? std::optional(QLineF(m_marks[2], m_marks[3])) : std::nullopt;
}

Result<PhotoLength> measuredOn(const PhotoMarks& marks, double known_mm, const MarkingError& error) {
    if (!marks.complete())
        return Error{ErrorKind::badInput, "marks are missing"};
    if (!(known_mm > 0) || !std::isfinite(known_mm))
        return Error{ErrorKind::badInput, "the known length is above 0 mm"};
    const double known_px = marks.known()->length();
    const double crystal_px = marks.crystal()->length();
    if (known_px < shortestKnown_px)
        return Error{ErrorKind::badInput, "the known length is too short on this photo"};
    const double size_mm = known_mm * crystal_px / known_px;
    const double scale =
        relativeVariance(known_px, error.mark_px) + (error.known_mm / known_mm) * (error.known_mm / known_mm);
    const double ends_mm = std::sqrt(2.0) * error.mark_px * known_mm / known_px;
    return PhotoLength{size_mm, std::sqrt(size_mm * size_mm * scale + ends_mm * ends_mm)};
}

} // namespace ringhold
