// The cones of a past firing read when the kiln is open: an hour for each, filed into the probe's offset.
#pragma once

#include "core/firing/firing_record.h"

#include <QWidget>

#include <memory>
#include <optional>
#include <vector>

class QComboBox;
class QGridLayout;
class QPushButton;

namespace ringhold {

class Notebook;
class Remark;
struct OpenedFiring;

/// The notebook outlives it.
class ColdPackEntry : public QWidget {
    Q_OBJECT

  public:
    explicit ColdPackEntry(Notebook& notebook, QWidget* parent = nullptr);

    /// Asks for that firing's packs; what was read of them before is chosen already. Null asks for none, and
    /// so does a firing that goes on.
    void show(std::shared_ptr<const OpenedFiring> firing);
    /// Writes the hours that differ from what was written before, as looks of now, and files the offset
    /// again.
    void write();

  Q_SIGNALS:
    /// The book has new looks and offsets.
    void written();

  private:
    struct Choice {
        PackId pack{};
        std::string cone;
        QComboBox* hours = nullptr; ///< their data in hours; "not read" has none
    };
    void addPack(const Pack& pack);
    std::optional<Look> before(PackId pack, const std::string& cone) const;
    std::vector<Look> unwritten() const;
    Status keep(const std::vector<Look>& looks);
    Status fileAgain();
    void tellButton();

    Notebook& m_notebook;
    std::shared_ptr<const OpenedFiring> m_firing;
    std::vector<Choice> m_choices;
    QGridLayout* m_grid;
    QPushButton* m_write;
    Remark* m_said;
};

} // namespace ringhold
