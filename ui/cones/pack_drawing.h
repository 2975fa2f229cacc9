// A pack of cones on its plaque, as paint: the same on the pack card, in the spyhole and in the report.
#pragma once

#include "ui/cones/cone_shape.h"

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>

#include <optional>
#include <vector>

class QPainter;

namespace ringhold {

struct Palette;

/// Where the model thinks a cone stands; hours 0 to 6.
struct GhostCone {
    double hour = 0;
    double low = 0; ///< of the interval
    double high = 0;
};

struct DrawnCone {
    QString name;
    double hour = 0; ///< as last seen
    std::optional<GhostCone> ghost;
    bool picked = false; ///< its name is set bold and underlined
};

struct DrawnPack {
    std::vector<DrawnCone> cones; ///< in the pack's order; drawn from the right when it leans left
    bool leansLeft = false;
};

struct PackInks {
    QColor cone, outline, plaque, ghost, words;
    static PackInks onPaper(const Palette& palette);
    static PackInks inTheGlow(const Palette& palette);
};

/// The pack fitted into a rectangle, as large as it goes, at its foot; cheap to make.
class PackDrawing {
  public:
    /// `nameHeight` is what the font of the names needs below the plaque; 0 for no names.
    PackDrawing(DrawnPack pack, const QRectF& area, double nameHeight);

    void paint(QPainter& painter, const PackInks& inks, const QFont& nameFont) const;

    const DrawnPack& pack() const { return m_pack; }
    ConePlace place(std::size_t cone) const;
    QRectF plaque() const { return m_plaque; }
    QRectF nameRect(std::size_t cone) const;
    /// The cone whose body, tip or name is there: the nearest one, when several are close.
    std::optional<std::size_t> coneAt(QPointF point) const;

    /// Width over height of the cones and plaque, without names, for so many cones.
    static double aspect(std::size_t cones);

  private:
    void paintInterval(QPainter& painter, std::size_t cone, const QColor& ink) const;
    void paintGhost(QPainter& painter, std::size_t cone, const QColor& ink) const;
    void paintName(QPainter& painter, std::size_t cone, const QFont& font) const;

    DrawnPack m_pack;
    double m_length = 0;
    double m_firstFoot = 0;
    double m_pitch = 0; ///< in cone lengths
    double m_nameHeight = 0;
    QRectF m_plaque;
};

} // namespace ringhold
