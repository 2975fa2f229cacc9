// Where a firing's lines other than instrument readings are kept; the book stands behind it.
#pragma once

#include "core/base/result.h"
#include "core/firing/alarm_event.h"
#include "core/firing/kiln_records.h"

namespace ringhold {

/// Each call is on the disk when it returns without an error. One thread at a time.
class FiringLog {
  public:
    virtual ~FiringLog() = default;
    virtual Result<ChannelId> add(const Channel& channel) = 0;
    virtual Status alter(const Channel& channel) = 0;
    virtual Result<LookId> add(const Look& look) = 0;
    virtual Result<SettingId> add(const Setting& setting) = 0;
    virtual Result<NoteId> add(const Note& note) = 0;
    virtual Status add(const Reading& reading) = 0; ///< one typed by hand
    virtual Status add(const AlarmEvent& event) = 0;
    virtual Result<StepCorrectionId> add(const StepCorrection& correction) = 0;
    virtual Result<MeterStandId> add(const MeterStand& stand) = 0;
    virtual Status strike(LookId look, Instant when) = 0;
    virtual Status strike(SettingId setting, Instant when) = 0;
    virtual Status strike(NoteId note, Instant when) = 0;
    virtual Status strike(StepCorrectionId correction, Instant when) = 0;
    virtual Status strike(MeterStandId stand, Instant when) = 0;
    virtual Status strike(ChannelId channel, Instant at, Instant when) = 0; ///< the reading of that instant
    virtual Status restore(LookId look, Instant when) = 0;
    virtual Status restore(SettingId setting, Instant when) = 0;
    virtual Status restore(NoteId note, Instant when) = 0;
    virtual Status restore(StepCorrectionId correction, Instant when) = 0;
    virtual Status restore(MeterStandId stand, Instant when) = 0;
    virtual Status restore(ChannelId channel, Instant at, Instant when) = 0;
    virtual Status file(const FiledOffset& offset) = 0;
    virtual Status end(FiringId firing, Instant at) = 0;
};

} // namespace ringhold
