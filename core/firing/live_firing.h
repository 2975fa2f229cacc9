// The firing that goes on now, in memory: what instruments and the potter tell it, on its way to the disk and
// to whoever watches.
#pragma once

#include "core/firing/firing_log.h"
#include "core/firing/firing_record.h"
#include "core/firing/journal.h"
#include "core/instrument/instrument.h"
#include "core/units/curve.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// Hears of every change, at once and in the thread that made it.
class LiveFiringListener {
  public:
    virtual ~LiveFiringListener() = default;
    /// A new value at the end of its channel.
    virtual void onReading(const Channel& channel, const Reading& reading) = 0;
    /// A look, note, setting or typed reading was added, struck or restored: whatever is reckoned from lines
    /// is to be reckoned again. `from` is the earliest instant that changed.
    virtual void onLinesChanged(Instant from) = 0;
};

/// How a value stands to the clock.
enum class Freshness {
    none,  ///< no reading yet
    live,  ///< as young as the sampling makes it
    stale, ///< older than twice the sample period: shown as what was, not what is
    open   ///< the instrument says that the probe is open
};

/// One thread at a time. Readings of instruments go through the journal and are pending until it tells that
/// they are durable; lines written by hand are on the disk when the call returns, and are not in the firing
/// if it fails.
class LiveFiring {
  public:
    /// Goes on with `record`, as read from the book; journal and log must outlive it.
    LiveFiring(FiringRecord record, Journal& journal, FiringLog& log);

    const FiringRecord& record() const { return m_record; }
    /// Nothing to be called back when null. Must outlive the firing or be taken off.
    void setListener(LiveFiringListener* listener) { m_listener = listener; }

    /// A sample of an instrument; no disk holds it up. Its channel is found by quantity and label, or added,
    /// with an id below 0 that stays its id here; the first label heard is that of the probe which the firing
    /// began with. Values that come at an instant at or before the last of their channel (a clock set back)
    /// are refused as badInput; nothing is lost that was kept before.
    Status take(const Sample& sample);

    Status writeReading(Instant at, Temperature value);
    Result<LookId> writeLook(PackId pack, Instant at, const std::string& cone, double hour);
    Result<NoteId> writeNote(Instant at, const std::string& text);
    Result<SettingId> writeSetting(Instant at, const std::string& what, const std::string& value);
    /// The potter's word that the kiln is in that step of the plan by then.
    Result<StepCorrectionId> writeStep(Instant at, std::size_t step);
    /// A meter's stand, at least 0; badInput otherwise.
    Result<MeterStandId> writeMeterStand(Instant at, double stand, MeterUnit unit);
    Status strike(LookId look, Instant when);
    Status strike(NoteId note, Instant when);
    Status strike(SettingId setting, Instant when);
    Status strike(StepCorrectionId correction, Instant when);
    Status strike(MeterStandId stand, Instant when);
    Status strikeReading(ChannelId channel, Instant at, Instant when);
    Status restore(LookId look, Instant when);
    Status restore(NoteId note, Instant when);
    Status restore(SettingId setting, Instant when);
    Status restore(StepCorrectionId correction, Instant when);
    Status restore(MeterStandId stand, Instant when);
    Status restoreReading(ChannelId channel, Instant at, Instant when);
    Status end(Instant at);

    /// What the firing is judged by: the first temperature channel of an instrument, else the readings by
    /// hand. Struck ones are left out.
    const Curve& controlCurve() const;
    std::optional<ChannelId> controlChannel() const;
    /// Values of any channel without the struck ones, in time order; those of a temperature in °C.
    const Curve& curve(ChannelId channel) const;

    /// By the control channel's own sample period (the median of its last intervals, at least 1 s; the
    /// reminder interval matters for readings by hand, so those are given 30 min).
    Freshness freshness(Instant now) const;
    Duration samplePeriod() const;
    std::optional<CurvePoint> lastReading() const;

    /// To be called in this object's thread when the journal has told so.
    void markDurable(Ticket upTo);
    /// Likewise, of a channel that was added: until then none of its readings can be struck.
    void markKept(ChannelId given, ChannelId kept) { m_kept[given] = kept; }
    /// How many readings of the channel's curve, counted from its start, are on the disk.
    std::size_t durableCount(ChannelId channel) const;
    std::size_t pendingCount() const { return m_appended - m_durable; }

  private:
    struct ChannelState {
        Curve curve;
        std::vector<Ticket> tickets; ///< by point of the curve; 0 for what came from the book
        bool open = false;
    };

    /// The channel of a known probe that has no label yet, since nothing was heard of it.
    Channel* waitingChannel(Quantity quantity);
    Channel* knownChannel(Quantity quantity, const std::string& label);
    Channel& channelFor(const Sample& sample);
    Result<Channel*> handChannel();
    /// As the book knows it.
    Result<ChannelId> inBook(ChannelId channel) const;
    ChannelState& stateOf(ChannelId channel) { return m_channels[channel]; }
    void rebuild(ChannelId channel);
    template <class Line, class Id>
    Status mark(std::vector<Line>& lines, Id id, bool struck, Instant when);
    Status markReading(ChannelId channel, Instant at, bool struck, Instant when);
    void told(Instant from);

    FiringRecord m_record;
    Journal& m_journal;
    FiringLog& m_log;
    LiveFiringListener* m_listener = nullptr;
    std::map<ChannelId, ChannelState> m_channels;
    std::map<ChannelId, ChannelId> m_kept; ///< by the id given here, that of the book
    Ticket m_appended = 0;
    Ticket m_durable = 0;
};

/// The label of the channel that holds readings by hand.
inline constexpr const char* byHandLabel = "by hand";

} // namespace ringhold
