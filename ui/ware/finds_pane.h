// What is looked for in one piece's crystals: the rings' radii, and whether the firing's sags are to be seen.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/learn/growth_marks.h"
#include "ui/ware/piece_finds.h"

#include <QWidget>

#include <vector>

class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace ringhold {

class ChoiceRow;
class Preferences;

/// Preferences and finds outlive it.
class FindsPane : public QWidget {
    Q_OBJECT

  public:
    FindsPane(const Preferences& preferences, PieceFinds& finds, QWidget* parent = nullptr);

    /// What the piece's firing drew, and the growth rate of its glaze, by which places are told.
    void show(const GrowthMarks& marks, const GrowthRate& rate);
    QLineEdit& rings() { return *m_rings; }
    int questions() const { return static_cast<int>(m_sags.size()); }
    ChoiceRow& answer(int question) { return *m_sags[static_cast<std::size_t>(question)].answer; }

  Q_SIGNALS:
    void troubled(const QString& why);

  private:
    struct SagRow {
        GrowthSag sag;
        SizeRange radius;
        QWidget* row = nullptr;
        QLabel* question = nullptr;
        ChoiceRow* answer = nullptr;
    };
    void layRows(const std::vector<GrowthSag>& sags);
    void tell();
    void takeRings();
    QString question(const SagRow& row) const;
    QString drawnWords() const;

    const Preferences& m_preferences;
    PieceFinds& m_finds;
    QLabel* m_ask;
    QLineEdit* m_rings;
    QLabel* m_drawn;
    QVBoxLayout* m_rows;
    std::vector<SagRow> m_sags;
    std::vector<SizeRange> m_ringPlaces;
    GrowthRate m_rate;
};

} // namespace ringhold
