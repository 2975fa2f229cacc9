// What is known of one kiln, to be written in place.
#pragma once

#include "core/firing/records.h"

#include <QWidget>

class QComboBox;
class QFormLayout;
class QLineEdit;

namespace ringhold {

class Remark;

/// A field that is left with sense in it is told at once; one without says below what is wrong with it, and
/// holds back all until it is mended.
class KilnForm : public QWidget {
    Q_OBJECT

  public:
    explicit KilnForm(QWidget* parent = nullptr);

    /// A kiln without an id is a new one: it is told as soon as it has a name.
    void show(const Kiln& kiln);
    const Kiln& kiln() const { return m_kiln; }
    /// What the book has against the name.
    void refuse(const QString& why);
    void startWriting();

  Q_SIGNALS:
    void written(const Kiln& kiln);

  private:
    struct Field {
        QLineEdit* line = nullptr;
        Remark* trouble = nullptr;
        QWidget* row = nullptr;
    };
    Field addField(const QString& label, const QString& hint);
    void showFuel(Fuel fuel);
    std::optional<double> number(Field& field, bool mayBeZero, bool& good);
    void take();

    QFormLayout* m_form;
    Field m_name;
    QComboBox* m_fuel;
    Field m_volume;
    Field m_power;
    Field m_volts;
    Field m_price;
    Field m_gasPrice;
    Field m_note;
    Kiln m_kiln;
};

} // namespace ringhold
