// The fields of one kind of instrument, and the specification that they make.
#pragma once

#include "core/instrument/instrument_spec.h"
#include "ui/instrument/instrument_fields.h"

#include <QWidget>

#include <map>
#include <string>
#include <vector>

class QComboBox;
class QFormLayout;
class QLineEdit;

namespace ringhold {

struct InstrumentFound;

class FieldForm : public QWidget {
    Q_OBJECT

  public:
    explicit FieldForm(QWidget* parent = nullptr);

    /// Lays out the fields of that kind, with what is usual in them.
    void showKind(const QString& scheme);
    /// Fills them in as that specification says.
    void showSpec(const InstrumentSpec& spec);
    /// What there is to choose from in a field for a port; what was typed stays.
    void offerPorts(const std::vector<InstrumentFound>& ports);
    /// As filled in; what is usual is left out.
    InstrumentSpec spec() const;

  Q_SIGNALS:
    void changed();

  private:
    struct Entry {
        InstrumentField field;
        QLineEdit* line = nullptr; ///< or
        QComboBox* box = nullptr;
        QString value() const;
        void set(const QString& value) const;
    };
    QWidget* make(Entry& entry);
    QWidget* makeFile(Entry& entry);

    QString m_scheme;
    std::map<std::string, std::string> m_rest; ///< told by showSpec(), and without a field here
    QFormLayout* m_form;
    std::vector<Entry> m_entries;
};

} // namespace ringhold
