// What past firings teach of a glaze: a lesson for each cause, and the next firing that would tell most.
#pragma once

#include "core/base/result.h" // before the cards: see DEVELOPERS.md on moc and <compare>
#include "core/glaze/glaze_card.h"
#include "core/learn/learning.h"

#include <QWidget>

class QLabel;

namespace ringhold {

class ChoiceRow;
class LessonPlot;
class Preferences;
class Theme;

/// Preferences and theme outlive it.
class LessonsPane : public QWidget {
    Q_OBJECT

  public:
    LessonsPane(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    void show(const GlazeCard& card, std::vector<PieceResult> pieces);
    const std::vector<Lesson>& lessons() const { return m_lessons; }
    LessonPlot& plot() { return *m_plot; }

  private:
    void learn();
    void tell();
    QString nextWords() const;
    Judged judged() const;

    const Preferences& m_preferences;
    GlazeCard m_card;
    std::vector<PieceResult> m_pieces;
    std::vector<Lesson> m_lessons;
    ChoiceRow* m_judged;
    ChoiceRow* m_causes;
    LessonPlot* m_plot;
    QLabel* m_words;
    QLabel* m_confounding;
    QLabel* m_offsets;
    QLabel* m_next;
};

} // namespace ringhold
