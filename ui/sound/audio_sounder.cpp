#include "ui/sound/audio_sounder.h"

#include "ui/sound/tones.h"

#include <QAudioDevice>
#include <QAudioSink>
#include <QBuffer>
#include <QMediaDevices>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <optional>

namespace ringhold {

namespace {

/// Sixteen bits where the device takes them, else floating point.
std::optional<QAudioFormat> formatOf(const QAudioDevice& device) {
    QAudioFormat format = device.preferredFormat();
    if (format.sampleRate() <= 0 || format.channelCount() <= 0)
        return std::nullopt;
    for (const auto sample : {QAudioFormat::Int16, QAudioFormat::Float}) {
        format.setSampleFormat(sample);
        if (device.isFormatSupported(format))
            return format;
    }
    return std::nullopt;
}

template <class T>
void append(QByteArray& bytes, T value) {
    char raw[sizeof(T)];
    std::memcpy(raw, &value, sizeof(T));
    bytes.append(raw, sizeof(T));
}

/// The same on every channel.
QByteArray bytesOf(const std::vector<float>& samples, const QAudioFormat& format) {
    QByteArray bytes;
    bytes.reserve(static_cast<qsizetype>(samples.size()) * format.bytesPerFrame());
    for (const float sample : samples)
        for (int channel = 0; channel < format.channelCount(); ++channel)
            if (format.sampleFormat() == QAudioFormat::Int16)
                append(bytes,
                       static_cast<std::int16_t>(std::lround(std::clamp(sample, -1.0F, 1.0F) * 32767)));
            else
                append(bytes, sample);
    return bytes;
}

} // namespace

struct AudioSounder::Playing {
    Playing(const QAudioDevice& device, const QAudioFormat& format, Sound sound)
        : bytes(bytesOf(samplesOf(sound, format.sampleRate()), format)), sink(device, format) {
        buffer.setBuffer(&bytes);
        buffer.open(QIODevice::ReadOnly);
        sink.start(&buffer);
    }
    ~Playing() { sink.stop(); }
    /// That the bytes run out at the end is none.
    bool failed() const { return sink.error() != QAudio::NoError && sink.error() != QAudio::UnderrunError; }

    QByteArray bytes;
    QBuffer buffer;
    QAudioSink sink;
};

AudioSounder::AudioSounder() = default;
AudioSounder::~AudioSounder() = default;

bool AudioSounder::play(Sound sound) {
    const bool failedBefore = m_playing && m_playing->failed();
    m_playing.reset();
    const auto device = QMediaDevices::defaultAudioOutput();
    const auto format = device.isNull() ? std::nullopt : formatOf(device);
    if (!format)
        return false;
    m_playing = std::make_unique<Playing>(device, *format, sound);
    return !failedBefore && !m_playing->failed();
}

void AudioSounder::stop() {
    m_playing.reset();
}

} // namespace ringhold
