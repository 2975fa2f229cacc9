// A ribbon at the notebook's edge that leads to a spread.
#pragma once

#include <QAbstractButton>

namespace ringhold {

class Theme;

/// Its words run downwards; the one whose spread is open is filled and set bold. The theme outlives it.
class Ribbon : public QAbstractButton {
    Q_OBJECT

  public:
    Ribbon(const QString& words, const QKeySequence& key, const Theme& theme, QWidget* parent = nullptr);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Theme& m_theme;
};

} // namespace ringhold
