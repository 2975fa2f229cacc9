// What stands in for a sound that cannot be heard: the whole window flashes.
#pragma once

#include <QTimer>
#include <QWidget>

namespace ringhold {

class Theme;

/// A cover over its parent that takes no clicks. Twice a second at the most: three flashes in a second may
/// bring on seizures (Web Content Accessibility Guidelines 2.1, 2.3.1). The theme outlives it.
class WindowFlash : public QWidget {
    Q_OBJECT

  public:
    WindowFlash(const Theme& theme, QWidget& window);

    /// So many times, from now on.
    void flash(int times);
    bool flashing() const { return m_left > 0; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void step();

    const Theme& m_theme;
    int m_left = 0; ///< half flashes
    QTimer m_timer;
};

} // namespace ringhold
