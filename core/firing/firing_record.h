// One firing with everything the book knows of it: what is read, reported, compared and handed on as a whole.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/kiln_records.h"
#include "core/firing/log_event.h"
#include "core/firing/records.h"
#include "core/firing/ware_records.h"
#include "core/glaze/glaze_card.h"

#include <vector>

namespace ringhold {

/// The lines are joined by their ids: channel to probe, reading to channel, look to pack, outcome to piece.
/// Struck lines are in it too; whoever reckons leaves them out.
struct FiringRecord {
    Firing firing;
    Kiln kiln;
    std::vector<Probe> probes;     ///< those that channels or filed offsets name
    std::vector<Channel> channels; ///< the first of temperature is the control probe's
    std::vector<Reading> readings; ///< in time order over all channels
    std::vector<Pack> packs;
    std::vector<Look> looks;       ///< in time order
    std::vector<Setting> settings; ///< in time order
    std::vector<Note> notes;       ///< in time order
    std::vector<Piece> pieces;
    std::vector<Outcome> outcomes;
    std::vector<FiledOffset> filedOffsets;         ///< that this firing told
    std::vector<AlarmEvent> alarmEvents{};         ///< in the order of writing
    std::vector<StepCorrection> stepCorrections{}; ///< in time order
    std::vector<MeterStand> meterStands{};         ///< in time order
    std::vector<Photo> photos{};                   ///< without their pictures unless asked for
    std::vector<PhotoMeasure> photoMeasures{};
    std::vector<RingRadius> ringRadii{};
    std::vector<SagSeen> sagsSeen{};
    std::vector<GlazeCard> glazeCards{}; ///< that the pieces name
    std::vector<LogEvent> logEvents{};   ///< in time order
};

} // namespace ringhold
