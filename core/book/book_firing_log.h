// The lines of a live firing, kept in the book.
#pragma once

#include "core/book/writer.h"
#include "core/firing/firing_log.h"

namespace ringhold {

/// Same thread as the book, which must outlive this.
class BookFiringLog : public FiringLog {
  public:
    explicit BookFiringLog(const Book& book) : m_writer(book) {}

    Result<ChannelId> add(const Channel& channel) override { return m_writer.add(channel); }
    Status alter(const Channel& channel) override { return m_writer.alter(channel); }
    Result<LookId> add(const Look& look) override { return m_writer.add(look); }
    Result<SettingId> add(const Setting& setting) override { return m_writer.add(setting); }
    Result<NoteId> add(const Note& note) override { return m_writer.add(note); }
    Status add(const Reading& reading) override;
    Status add(const AlarmEvent& event) override { return m_writer.add(event); }
    Result<StepCorrectionId> add(const StepCorrection& correction) override {
        return m_writer.add(correction);
    }
    Result<MeterStandId> add(const MeterStand& stand) override { return m_writer.add(stand); }
    Status strike(LookId look, Instant when) override { return m_writer.strike(look, when); }
    Status strike(SettingId setting, Instant when) override { return m_writer.strike(setting, when); }
    Status strike(NoteId note, Instant when) override { return m_writer.strike(note, when); }
    Status strike(StepCorrectionId id, Instant when) override { return m_writer.strike(id, when); }
    Status strike(MeterStandId stand, Instant when) override { return m_writer.strike(stand, when); }
    Status strike(ChannelId channel, Instant at, Instant when) override;
    Status restore(LookId look, Instant when) override { return m_writer.restore(look, when); }
    Status restore(SettingId setting, Instant when) override { return m_writer.restore(setting, when); }
    Status restore(NoteId note, Instant when) override { return m_writer.restore(note, when); }
    Status restore(StepCorrectionId id, Instant when) override { return m_writer.restore(id, when); }
    Status restore(MeterStandId stand, Instant when) override { return m_writer.restore(stand, when); }
    Status restore(ChannelId channel, Instant at, Instant when) override;
    Status file(const FiledOffset& offset) override { return m_writer.file(offset); }
    Status end(FiringId firing, Instant at) override { return m_writer.end(firing, at); }

  private:
    BookWriter m_writer;
};

} // namespace ringhold
