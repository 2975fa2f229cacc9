#include "ui/sound/tones.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

struct Pitch {
    double hertz = 0;
    double seconds = 0;
    double pause = 0; ///< seconds after it
    double loudness = 0;
};

constexpr double attack = 0.012;
constexpr double release = 0.05;
constexpr double overtones[] = {1, 0.4, 0.2};

std::vector<Pitch> notesOf(Sound sound) {
    if (sound == Sound::cue)
        return {{587, 0.22, 0.04, 0.3}, {784, 0.34, 0, 0.3}};
    if (sound == Sound::call)
        return {{784, 0.2, 0.1, 0.65}, {784, 0.2, 0.1, 0.65}, {988, 0.45, 0, 0.65}};
    std::vector<Pitch> notes;
    for (int i = 0; i < 4; ++i) {
        notes.push_back({988, 0.16, 0.02, 0.95});
        notes.push_back({1319, 0.16, 0.1, 0.95});
    }
    return notes;
}

/// Swells, and dies away in a raised cosine.
double envelope(double t, double length) {
    const auto ramp = [](double x) {
        return 0.5 - 0.5 * std::cos(std::numbers::pi * std::clamp(x, 0.0, 1.0));
    };
    return ramp(t / attack) * ramp((length - t) / release);
}

double tone(double hertz, double t) {
    double sum = 0, most = 0;
    for (int i = 0; i < 3; ++i) {
        sum += overtones[i] * std::sin(2 * std::numbers::pi * hertz * (i + 1) * t);
        most += overtones[i];
    }
    return sum / most;
}

} // namespace

std::vector<float> samplesOf(Sound sound, int samplesPerSecond) {
    std::vector<float> samples;
    for (const auto& note : notesOf(sound)) {
        const auto count = static_cast<int>(note.seconds * samplesPerSecond);
        for (int i = 0; i < count; ++i) {
            const double t = static_cast<double>(i) / samplesPerSecond;
            samples.push_back(
                static_cast<float>(note.loudness * envelope(t, note.seconds) * tone(note.hertz, t)));
        }
        samples.insert(samples.end(), static_cast<std::size_t>(note.pause * samplesPerSecond), 0.0F);
    }
    samples.push_back(0.0F);
    return samples;
}

} // namespace ringhold
