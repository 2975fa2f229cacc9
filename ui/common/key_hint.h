// "Alt R reading": a key and what it does, to be read or clicked.
#pragma once

#include "ui/theme/theme.h"

#include <QAbstractButton>
#include <QKeySequence>

namespace ringhold {

/// Clicking it does what the key does; the key itself is the owner's shortcut. It takes no focus, since its
/// key is the way there.
class KeyHint : public QAbstractButton {
    Q_OBJECT

  public:
    KeyHint(const Theme& theme, const QKeySequence& key, const QString& word, QWidget* parent = nullptr);

    QKeySequence key() const { return m_key; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    QString keyText() const;
    int chipWidth() const;

    const Theme& m_theme;
    QKeySequence m_key;
};

} // namespace ringhold
