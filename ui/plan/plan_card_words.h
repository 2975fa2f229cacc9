// A plan card in words, before anybody lays it out.
#pragma once

#include "core/firing/records.h"
#include "core/report/plan_card.h"
#include "ui/plan/plan_basis.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace ringhold {

class Preferences;

/// What a card is made of.
struct PlanCardSheet {
    PlanCard card;
    PlanBasis basis;
    Instant written;
};

struct PlanCardRow {
    QString number; ///< of the segment, from 1
    QString rate;   ///< "60", "full"
    QString set;    ///< "1 269"
    QString dwell;  ///< "40 min", "–"
    QString begins; ///< after the start: "6 h 17", "–" where no curve is known
    QString remark; ///< "until cone 9 is down: step on by hand"
    bool byHand = false;
};

/// Something that the potter must do.
struct PlanCardHand {
    QString act; ///< in one sentence
    QString more;
};

struct PlanCardWords {
    QString title;
    QString subtitle;  ///< kiln, probe, length, date
    QStringList heads; ///< of the columns, as in PlanCardRow; with the unit
    std::vector<PlanCardRow> rows;
    QString after; ///< what to do when the last segment is over
    QString full;  ///< what "full" means
    std::vector<PlanCardHand> byHand;
    QStringList offset; ///< how the set points were corrected
    QStringList cautions;
};

PlanCardWords planCardWords(const PlanCardSheet& sheet, const Preferences& preferences);

} // namespace ringhold
