// A window in which a crystal is measured on a photo.
#pragma once

#include "ui/ware/photo_measure.h"

#include <QDialog>

class QComboBox;
class QImage;
class QLabel;
class QLineEdit;
class QPushButton;

namespace ringhold {

class Heading;
class PhotoView;
class Theme;

/// A crystal or one of its rings, each from edge to edge. Tells by measured() what the potter keeps, and
/// closes. The theme outlives it.
class MeasureWindow : public QDialog {
    Q_OBJECT

  public:
    /// `what` is the piece's name.
    MeasureWindow(const Theme& theme, const QString& what, const QImage& photo, QWidget* parent = nullptr);

    /// What the marks say now.
    Result<PhotoLength> length() const;
    double knownLength_mm() const;
    /// Which ring was measured across, counted from the innermost, 0; nothing for a whole crystal.
    std::optional<int> ring() const;
    /// "crystal", "ring 2": as it is written beside the photo.
    QString what() const;
    PhotoView& view() { return *m_view; }

  Q_SIGNALS:
    void measured(const PhotoLength& length);

  private:
    QLayout* makeFoot();
    void tell();
    void keep();

    PhotoView* m_view;
    QLabel* m_next;
    QComboBox* m_what;
    QLineEdit* m_known;
    QLabel* m_result;
    QPushButton* m_back;
    QPushButton* m_keep;
};

/// "41.3 mm ± 0.8", rounded as its error allows; the error is two standard deviations.
QString lengthWords(const PhotoLength& length);

} // namespace ringhold
