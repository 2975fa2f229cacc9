// One live firing as the window sees it: instrument, live firing and its watch, kept together, told on by
// signals.
#pragma once

#include "core/firing/alarm_journal.h"
#include "core/firing/live_firing.h"
#include "core/instrument/instrument.h"
#include "core/watch/firing_watch.h"
#include "core/watch/look_doubt.h"

#include <QObject>
#include <QTimer>

#include <memory>
#include <optional>

namespace ringhold {

class Clock;
class Journal;

/// Lives in the window's thread. Data flows one way: the instrument's samples into the live firing, from
/// there to the journal (disk) and at once to the watch; then a signal. What the watch raises goes to the log
/// through a journal of its own, so that no disk holds up an alarm.
class FiringSession : public QObject, private LiveFiringListener, private InstrumentListener {
    Q_OBJECT

  public:
    /// Everything a session needs from outside.
    struct Parts {
        FiringRecord record;                    ///< as read from the book
        std::vector<FiledOffset> filed;         ///< of this kiln
        std::unique_ptr<FiringLog> log;         ///< lines to the book
        std::unique_ptr<Instrument> instrument; ///< null: readings by hand only
        const Clock* clock = nullptr;           ///< the wall clock; outlives the session
        WatchSettings watch{};
    };
    /// Hears, in any thread, that an alarm's event was kept or why not.
    using AlarmsKept = std::function<void(const Status&)>;
    /// How the session gets to the disk.
    struct Journals {
        std::function<Result<std::unique_ptr<Journal>>(JournalListener&)> readings;
        std::function<std::unique_ptr<AlarmJournal>(AlarmsKept)> alarms;
    };
    static Result<std::unique_ptr<FiringSession>> make(Parts parts, const Journals& journals);
    ~FiringSession() override;

    /// To write lines; also everything there is to know of what was logged.
    LiveFiring& firing() { return *m_firing; }
    const LiveFiring& firing() const { return *m_firing; }
    const FiringRecord& record() const { return m_firing->record(); }

    /// Now, at this kiln: a replay or practice kiln may run ahead of the wall clock.
    Instant now() const;
    const FiringWatch& watch() const { return *m_watch; }
    /// Nothing for a firing without a plan.
    const StepFollower* follower() const { return m_watch->follower(); }
    const FiringForecast* forecaster() const { return m_watch->forecaster(); }
    /// The newest forecast; nothing before there are packs and two readings.
    const std::optional<Forecast>& forecast() const { return m_watch->forecast(); }
    /// Looks that do not fit in forecast().
    const std::vector<LookDoubt>& lookDoubts() const { return m_doubts; }
    /// What was believed of the offset when the firing began, by the order of the packs.
    const std::vector<OffsetPrior>& priors() const { return m_priors; }
    std::optional<ClimbShown> climbShown() const { return climbShownAtEnd(m_firing->controlCurve()); }

    LinkState linkState() const { return m_link; }
    QString linkDetail() const { return m_linkDetail; }
    /// "" for readings by hand only.
    QString instrumentDescription() const;
    Instrument* instrument() { return m_parts.instrument.get(); }
    /// Why readings do not get to the disk just now; empty when they do.
    QString diskTrouble() const { return m_diskTrouble; }

    const AlarmBoard& alarms() const { return m_watch->board(); }
    void acknowledge(AlarmCause cause, const QString& who);
    void acknowledgeAll(const QString& who);
    /// No sound before then but for urgent alarms; the potter's own choice.
    void keepQuietUntil(std::optional<Instant> until);
    /// The potter's word on the plan's step, by its index: a line of the log, on the disk when this returns.
    Status correctStep(std::size_t step);
    /// Reminder and words, when the preferences change.
    void setWatchSettings(const WatchSettings& settings);
    /// Judges the firing as it stands now and tells of the forecast; done every second by itself. A reading
    /// is judged as soon as the event loop is back, whatever the disk does.
    void check();

    /// Ends the firing, closes the instrument and files the offset that the looks have told.
    Status end();

  Q_SIGNALS:
    void readingTaken(); ///< a new value on some channel
    void linesChanged(); ///< a look, note, setting or typed reading came, was struck or restored
    void
    forecastChanged();     ///< forecast() or follower()'s position is new; at most once a second of wall time
    void alarmsChanged();  ///< alarms(), or how loudly they call
    void alarmsKept();     ///< their newest events are in the log
    void durableChanged(); ///< more readings are on the disk
    void linkChanged();
    void diskTroubleChanged();
    void rawLine(const QString& line, bool understood);

  private:
    class DiskNews;
    explicit FiringSession(Parts parts);
    Status open(const Journals& journals);
    Status makeWatch();
    void advanceInstrument();
    void judge();
    WatchTroubles troubles() const;
    void keep(const std::vector<AlarmEvent>& events);
    void tellForecast();
    Status fileOffsets();

    void onReading(const Channel& channel, const Reading& reading) override;
    void onLinesChanged(Instant from) override;
    void onSample(const Sample& sample) override;
    void onLine(const std::string& line, bool understood) override;
    void onLink(LinkState state, const std::string& detail) override;

    Parts m_parts;
    std::unique_ptr<DiskNews> m_diskNews; ///< before the journal, which reports to it
    std::unique_ptr<Journal> m_journal;
    std::unique_ptr<LiveFiring> m_firing;
    std::unique_ptr<AlarmJournal> m_alarmJournal;
    std::unique_ptr<FiringWatch> m_watch;
    std::vector<LookDoubt> m_doubts;
    std::vector<OffsetPrior> m_priors;
    LinkState m_link = LinkState::waiting;
    QString m_linkDetail;
    QString m_diskTrouble;
    QTimer m_advance;
    AlarmStage m_stage = AlarmStage::quiet; ///< as it was told last
    bool m_moved = false;                   ///< readings came since the forecast was told
    QTimer m_judge;
    QTimer m_refresh;
    QTimer m_check;
};

} // namespace ringhold
