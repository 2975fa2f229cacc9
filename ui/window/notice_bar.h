// Tells of troubles without stopping anyone: a bar across the window that can be put away.
#pragma once

#include <QFrame>

class QLabel;

namespace ringhold {

class Theme;

class NoticeBar : public QFrame {
    Q_OBJECT

  public:
    explicit NoticeBar(const Theme& theme, QWidget* parent = nullptr);
    void tell(const QString& what);
    QString text() const;

  private:
    void dress();
    const Theme& m_theme;
    QLabel* m_words;
};

} // namespace ringhold
