#include "core/learn/learning.h"

#include "core/learn/cause_lesson.h"
#include "core/learn/confounding.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double surely = 0.05;

/// Holm's rule: the smallest chance is raised by the number of questions, the next by one less, and none is
/// smaller than one before it.
void raiseChances(std::vector<Lesson>& lessons, int questions) {
    std::vector<Lesson*> asked;
    for (auto& lesson : lessons)
        if (lesson.chance)
            asked.push_back(&lesson);
    std::ranges::sort(asked, {}, [](const Lesson* lesson) { return *lesson->chance; });
    double least = 0;
    auto left = static_cast<double>(asked.size()) * std::max(questions, 1);
    for (auto* lesson : asked) {
        least = std::max(least, std::min(1.0, *lesson->chance * left));
        lesson->chance = least;
        left -= 1;
    }
}

bool hasSomethingToShow(const Lesson& lesson) {
    return lesson.verdict != Verdict::notEnough || lesson.shortfall == Shortfall::unclear;
}

void judge(Lesson& lesson) {
    if (!lesson.chance || *lesson.chance > surely) {
        lesson.claim.reset();
        return;
    }
    lesson.verdict = Verdict::claimed;
    lesson.shortfall.reset();
}

Lesson lessonOn(Cause cause, std::span<const PieceResult> pieces, Judged judged) {
    if (cause == Cause::position)
        return positionLesson(pieces, judged);
    return cause == Cause::application ? applicationLesson(pieces, judged)
                                       : firingLesson(pieces, cause, judged);
}

} // namespace

std::vector<Lesson> learnFrom(std::span<const PieceResult> pieces, const LearningQuestion& question) {
    std::vector<Lesson> lessons;
    for (const Cause cause :
         {Cause::growthHold, Cause::holdTime, Cause::peak, Cause::application, Cause::position})
        lessons.push_back(lessonOn(cause, pieces, question.judged));
    raiseChances(lessons, question.questions);
    for (auto& lesson : lessons) {
        judge(lesson);
        if (hasSomethingToShow(lesson))
            lesson.confounders = confoundersOf(pieces, lesson.cause, question.judged);
    }
    return lessons;
}

} // namespace ringhold
