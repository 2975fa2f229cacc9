// "Eyes. Infrared-rated eyewear ...": a loud lead and soft words after it.
#pragma once

#include <QLabel>

namespace ringhold {

class Theme;

/// The theme outlives it.
class CautionLine : public QLabel {
    Q_OBJECT

  public:
    CautionLine(const Theme& theme, const QString& lead, const QString& words, QWidget* parent = nullptr);

  private:
    void dress();

    const Theme& m_theme;
    QString m_lead;
    QString m_words;
};

} // namespace ringhold
