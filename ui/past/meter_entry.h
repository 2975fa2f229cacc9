// What the electricity or gas meter stood at before and after a firing, and what that comes to.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "ui/past/opened_firing.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;

namespace ringhold {

class Notebook;
class Remark;

/// A stand that is typed anew is corrected, one that is emptied struck: both stay readable in the log. In
/// kWh, for a gas kiln in m³. The notebook outlives it.
class MeterEntry : public QWidget {
    Q_OBJECT

  public:
    explicit MeterEntry(Notebook& notebook, QWidget* parent = nullptr);

    void show(std::shared_ptr<const OpenedFiring> firing);
    QLineEdit& before() { return *m_before; }
    QLineEdit& after() { return *m_after; }

  Q_SIGNALS:
    void written();

  private:
    struct Stands {
        std::optional<MeterStand> before;
        std::optional<MeterStand> after;
    };
    QLineEdit* addField(const QString& name);
    Stands stands() const;
    MeterUnit unit() const;
    void take(QLineEdit& field, std::optional<MeterStand> kept, Instant at);
    Status write(const std::optional<MeterStand>& kept, std::optional<double> typed, Instant at);

    Notebook& m_notebook;
    QLabel* m_ask;
    QLineEdit* m_before;
    QLineEdit* m_after;
    QLabel* m_words;
    Remark* m_trouble;
    std::shared_ptr<const OpenedFiring> m_firing;
};

} // namespace ringhold
