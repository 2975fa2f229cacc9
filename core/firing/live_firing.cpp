#include "core/firing/live_firing.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration handPeriod = std::chrono::minutes(30);
constexpr Duration shortestPeriod = std::chrono::seconds(1);
constexpr std::size_t intervalsLooked = 9;

const Curve noCurve;

CurvePoint pointOf(const Reading& reading) {
    return {reading.at, Temperature::fromCelsius(reading.value)};
}

} // namespace

LiveFiring::LiveFiring(FiringRecord record, Journal& journal, FiringLog& log)
    : m_record(std::move(record)), m_journal(journal), m_log(log) {
    for (const auto& channel : m_record.channels)
        rebuild(channel.id);
}

void LiveFiring::rebuild(ChannelId channel) {
    auto& state = stateOf(channel);
    std::map<Instant, Ticket> tickets;
    for (std::size_t i = 0; i < state.curve.size(); ++i)
        tickets[state.curve[i].at] = state.tickets[i];
    state.curve.clear();
    state.tickets.clear();
    for (const auto& reading : m_record.readings) {
        if (reading.channel != channel || reading.struck)
            continue;
        const auto known = tickets.find(reading.at);
        // of several lines of one instant the last written counts
        if (!state.curve.empty() && state.curve.back().at == reading.at) {
            state.curve.pop_back();
            state.tickets.pop_back();
        }
        state.curve.push_back(pointOf(reading));
        state.tickets.push_back(known == tickets.end() ? 0 : known->second);
    }
}

Channel* LiveFiring::knownChannel(Quantity quantity, const std::string& label) {
    const auto found = std::ranges::find_if(
        m_record.channels, [&](const Channel& c) { return c.quantity == quantity && c.label == label; });
    return found == m_record.channels.end() ? nullptr : &*found;
}

Channel& LiveFiring::channelFor(const Sample& sample) {
    if (Channel* known = knownChannel(sample.quantity, sample.label))
        return *known;
    Channel* channel = waitingChannel(sample.quantity);
    if (channel)
        channel->label = sample.label;
    else
        channel = &m_record.channels.emplace_back(
            Channel{ChannelId(-1 - static_cast<std::int64_t>(m_record.channels.size())),
                    m_record.firing.id,
                    sample.quantity,
                    sample.label,
                    {}});
    m_journal.keep(*channel);
    return *channel;
}

/// Of the readings by hand; they are on the disk at once, and so is this.
Result<Channel*> LiveFiring::handChannel() {
    if (Channel* known = knownChannel(Quantity::temperature, byHandLabel))
        return known;
    if (Channel* waiting = waitingChannel(Quantity::temperature)) {
        Channel named = *waiting;
        named.label = byHandLabel;
        if (const auto kept = m_log.alter(named); !kept)
            return kept.error();
        *waiting = named;
        return waiting;
    }
    Channel channel{{}, m_record.firing.id, Quantity::temperature, byHandLabel, {}};
    const auto added = m_log.add(channel);
    if (!added)
        return added.error();
    channel.id = *added;
    return &m_record.channels.emplace_back(channel);
}

Result<ChannelId> LiveFiring::inBook(ChannelId channel) const {
    if (channel >= ChannelId{})
        return channel;
    const auto kept = m_kept.find(channel);
    if (kept == m_kept.end())
        return Error{ErrorKind::failed, "the reading is not on the disk yet: try again in a moment"};
    return kept->second;
}

Channel* LiveFiring::waitingChannel(Quantity quantity) {
    const auto found = std::ranges::find_if(m_record.channels, [&](const Channel& c) {
        return c.quantity == quantity && c.label.empty() && c.probe && curve(c.id).empty();
    });
    return found == m_record.channels.end() ? nullptr : &*found;
}

Status LiveFiring::take(const Sample& sample) {
    const Channel& channel = channelFor(sample);
    auto& state = stateOf(channel.id);
    state.open = !sample.value;
    if (!sample.value)
        return {};
    if (!state.curve.empty() && sample.at <= state.curve.back().at)
        return Error{ErrorKind::badInput,
                     "a reading came for " + formatIso8601(sample.at) + ", not later than the one before"};
    const Reading reading{channel.id, sample.at, *sample.value, Origin::instrument, false};
    m_appended = m_journal.append(reading);
    m_record.readings.push_back(reading);
    state.curve.push_back(pointOf(reading));
    state.tickets.push_back(m_appended);
    if (m_listener)
        m_listener->onReading(channel, reading);
    return {};
}

Status LiveFiring::writeReading(Instant at, Temperature value) {
    const auto channel = handChannel();
    if (!channel)
        return channel.error();
    const auto known = inBook((*channel)->id);
    if (!known)
        return known.error();
    Reading reading{*known, at, value.celsius(), Origin::hand, false};
    if (const auto kept = m_log.add(reading); !kept)
        return kept;
    reading.channel = (*channel)->id;
    const auto place = std::ranges::upper_bound(m_record.readings, at, {}, &Reading::at);
    m_record.readings.insert(place, reading);
    rebuild(reading.channel);
    told(at);
    return {};
}

Result<LookId> LiveFiring::writeLook(PackId pack, Instant at, const std::string& cone, double hour) {
    Look look{{}, pack, at, cone, hour, m_record.firing.ended.has_value(), false};
    const auto id = m_log.add(look);
    if (!id)
        return id.error();
    look.id = *id;
    m_record.looks.insert(std::ranges::upper_bound(m_record.looks, at, {}, &Look::at), look);
    told(at);
    return *id;
}

Result<NoteId> LiveFiring::writeNote(Instant at, const std::string& text) {
    Note note{{}, m_record.firing.id, at, text, false};
    const auto id = m_log.add(note);
    if (!id)
        return id.error();
    note.id = *id;
    m_record.notes.insert(std::ranges::upper_bound(m_record.notes, at, {}, &Note::at), note);
    told(at);
    return *id;
}

Result<SettingId> LiveFiring::writeSetting(Instant at, const std::string& what, const std::string& value) {
    Setting setting{{}, m_record.firing.id, at, what, value, false};
    const auto id = m_log.add(setting);
    if (!id)
        return id.error();
    setting.id = *id;
    m_record.settings.insert(std::ranges::upper_bound(m_record.settings, at, {}, &Setting::at), setting);
    told(at);
    return *id;
}

Result<StepCorrectionId> LiveFiring::writeStep(Instant at, std::size_t step) {
    StepCorrection correction{m_record.firing.id, at, step, false, {}};
    const auto id = m_log.add(correction);
    if (!id)
        return id.error();
    correction.id = *id;
    auto& all = m_record.stepCorrections;
    all.insert(std::ranges::upper_bound(all, at, {}, &StepCorrection::at), correction);
    told(at);
    return *id;
}

Result<MeterStandId> LiveFiring::writeMeterStand(Instant at, double value, MeterUnit unit) {
    if (!(value >= 0) || !std::isfinite(value))
        return Error{ErrorKind::badInput, "a meter's stand is a number of at least 0"};
    MeterStand stand{{}, m_record.firing.id, at, value, unit, false};
    const auto id = m_log.add(stand);
    if (!id)
        return id.error();
    stand.id = *id;
    auto& all = m_record.meterStands;
    all.insert(std::ranges::upper_bound(all, at, {}, &MeterStand::at), stand);
    told(at);
    return *id;
}

template <class Line, class Id>
Status LiveFiring::mark(std::vector<Line>& lines, Id id, bool struck, Instant when) {
    const auto line = std::ranges::find(lines, id, &Line::id);
    if (line == lines.end())
        return Error{ErrorKind::notFound, "there is no such line in this firing"};
    if (const auto kept = struck ? m_log.strike(id, when) : m_log.restore(id, when); !kept)
        return kept;
    line->struck = struck;
    told(line->at);
    return {};
}

Status LiveFiring::strike(LookId look, Instant when) {
    return mark(m_record.looks, look, true, when);
}

Status LiveFiring::strike(NoteId note, Instant when) {
    return mark(m_record.notes, note, true, when);
}

Status LiveFiring::strike(SettingId setting, Instant when) {
    return mark(m_record.settings, setting, true, when);
}

Status LiveFiring::strike(StepCorrectionId correction, Instant when) {
    return mark(m_record.stepCorrections, correction, true, when);
}

Status LiveFiring::strike(MeterStandId stand, Instant when) {
    return mark(m_record.meterStands, stand, true, when);
}

Status LiveFiring::restore(StepCorrectionId correction, Instant when) {
    return mark(m_record.stepCorrections, correction, false, when);
}

Status LiveFiring::restore(MeterStandId stand, Instant when) {
    return mark(m_record.meterStands, stand, false, when);
}

Status LiveFiring::restore(LookId look, Instant when) {
    return mark(m_record.looks, look, false, when);
}

Status LiveFiring::restore(NoteId note, Instant when) {
    return mark(m_record.notes, note, false, when);
}

Status LiveFiring::restore(SettingId setting, Instant when) {
    return mark(m_record.settings, setting, false, when);
}

Status LiveFiring::strikeReading(ChannelId channel, Instant at, Instant when) {
    return markReading(channel, at, true, when);
}

Status LiveFiring::restoreReading(ChannelId channel, Instant at, Instant when) {
    return markReading(channel, at, false, when);
}

Status LiveFiring::markReading(ChannelId channel, Instant at, bool struck, Instant when) {
    const auto reading = std::ranges::find_if(m_record.readings, [&](const Reading& r) {
        return r.channel == channel && r.at == at && r.struck != struck;
    });
    if (reading == m_record.readings.end())
        return Error{ErrorKind::notFound, "there is no such reading in this firing"};
    const auto known = inBook(channel);
    if (!known)
        return known.error();
    if (const auto kept = struck ? m_log.strike(*known, at, when) : m_log.restore(*known, at, when); !kept)
        return kept;
    reading->struck = struck;
    rebuild(channel);
    told(at);
    return {};
}

Status LiveFiring::end(Instant at) {
    if (const auto kept = m_log.end(m_record.firing.id, at); !kept)
        return kept;
    m_record.firing.ended = at;
    told(at);
    return {};
}

void LiveFiring::told(Instant from) {
    if (m_listener)
        m_listener->onLinesChanged(from);
}

std::optional<ChannelId> LiveFiring::controlChannel() const {
    std::optional<ChannelId> byHand;
    for (const auto& channel : m_record.channels) {
        if (channel.quantity != Quantity::temperature)
            continue;
        if (channel.label != byHandLabel)
            return channel.id;
        byHand = channel.id;
    }
    return byHand;
}

const Curve& LiveFiring::controlCurve() const {
    const auto channel = controlChannel();
    return channel ? curve(*channel) : noCurve;
}

const Curve& LiveFiring::curve(ChannelId channel) const {
    const auto state = m_channels.find(channel);
    return state == m_channels.end() ? noCurve : state->second.curve;
}

std::optional<CurvePoint> LiveFiring::lastReading() const {
    const auto& curve = controlCurve();
    return curve.empty() ? std::nullopt : std::optional(curve.back());
}

Duration LiveFiring::samplePeriod() const {
    const auto channel = controlChannel();
    const auto& curve = controlCurve();
    const bool byHand = channel && std::ranges::any_of(m_record.channels, [&](const Channel& c) {
                            return c.id == *channel && c.label == byHandLabel;
                        });
    if (byHand)
        return handPeriod;
    std::vector<Duration> intervals;
    for (std::size_t i = curve.size(); i-- > 1 && intervals.size() < intervalsLooked;)
        intervals.push_back(curve[i].at - curve[i - 1].at);
    if (intervals.empty())
        return std::chrono::minutes(1);
    std::ranges::nth_element(intervals,
                             intervals.begin() + static_cast<std::ptrdiff_t>(intervals.size() / 2));
    return std::max(shortestPeriod, intervals[intervals.size() / 2]);
}

Freshness LiveFiring::freshness(Instant now) const {
    const auto channel = controlChannel();
    if (!channel || curve(*channel).empty())
        return Freshness::none;
    if (m_channels.at(*channel).open)
        return Freshness::open;
    return now - curve(*channel).back().at > 2 * samplePeriod() ? Freshness::stale : Freshness::live;
}

void LiveFiring::markDurable(Ticket upTo) {
    m_durable = std::max(m_durable, upTo);
}

std::size_t LiveFiring::durableCount(ChannelId channel) const {
    const auto state = m_channels.find(channel);
    if (state == m_channels.end())
        return 0;
    const auto& tickets = state->second.tickets;
    return static_cast<std::size_t>(std::ranges::upper_bound(tickets, m_durable) - tickets.begin());
}

} // namespace ringhold
