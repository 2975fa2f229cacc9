// A pack of cones as a widget: drawn as last seen, dashed where the model thinks each stands now.
#pragma once

#include "ui/cones/pack_drawing.h"

#include <QWidget>

namespace ringhold {

class Theme;

/// Tells its pack in words to a screen reader too.
class PackView : public QWidget {
    Q_OBJECT

  public:
    /// The theme outlives it.
    explicit PackView(const Theme& theme, QWidget* parent = nullptr);

    void setPack(const DrawnPack& pack);
    const DrawnPack& pack() const { return m_pack; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint() / 2; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& m_theme;
    DrawnPack m_pack;
};

/// "9 at 4 o'clock, 10 just leaning, 11 standing"; with ghosts "; thought to be now: 9 at 4½ o'clock (4 to
/// 5), ...".
QString packInWords(const DrawnPack& pack);

} // namespace ringhold
