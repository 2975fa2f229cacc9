// Measuring on a photo: a length that is known gives the scale for one that is not.
#pragma once

#include "core/base/result.h"

#include <QLineF>
#include <QPointF>

#include <array>
#include <optional>
#include <vector>

namespace ringhold {

/// The four marks in the order in which they are set, in pixels of the picture.
enum class PhotoMark { knownFrom, knownTo, crystalFrom, crystalTo };
inline constexpr int photoMarks = 4;

/// A length on the photo with its standard deviation.
struct PhotoLength {
    double size_mm = 0;
    double sd_mm = 0;
};

/// How well marks are set.
struct MarkingError {
    double mark_px = 1.5;   ///< standard deviation of one mark along the line, in pixels of the picture
    double known_mm = 0.25; ///< of the known length: half a millimetre's division of a ruler
};

/// Marks come one after the other; any that is there can be moved.
class PhotoMarks {
  public:
    bool complete() const { return m_marks.size() == photoMarks; }
    int count() const { return static_cast<int>(m_marks.size()); }
    std::optional<QPointF> at(PhotoMark mark) const;
    /// The one to be set next; nothing when all are.
    std::optional<PhotoMark> next() const;
    /// Nothing happens when all are set.
    void add(QPointF where);
    void move(PhotoMark mark, QPointF where);
    void takeBack();
    void clear() { m_marks.clear(); }
    /// The mark nearest to a place, within a distance.
    std::optional<PhotoMark> near(QPointF where, double within) const;
    std::optional<QLineF> known() const;
    std::optional<QLineF> crystal() const;

  private:
    std::vector<QPointF> m_marks;
};

/// The crystal's size: known length times the ratio of the two distances. The relative variances of both
/// distances (two marks each) and of the known length add up. What lies nearer to the camera than the known
/// length looks larger: that is not in the error. badInput when marks are missing, the known length is not
/// above 0 or spans less than 20 pixels.
Result<PhotoLength> measuredOn(const PhotoMarks& marks, double known_mm, const MarkingError& error = {});

} // namespace ringhold
