// What can be heard from the window, and who makes it heard.
#pragma once

namespace ringhold {

enum class Sound {
    cue,    ///< soft: the next move is near
    call,   ///< of a warning
    urgent, ///< of an urgent alarm
};

/// In the window's thread. A failing sound path does not stay quiet: it says so, and the window takes its
/// place.
class Sounder {
  public:
    virtual ~Sounder() = default;
    /// Begins to sound and returns at once; a sound under way gives way. False when nothing can be heard
    /// here: there is no device, or it failed the last time.
    virtual bool play(Sound sound) = 0;
    virtual void stop() = 0;
};

/// Where there is no sound at all.
class NoSounder final : public Sounder {
  public:
    bool play(Sound) override { return false; }
    void stop() override {}
};

} // namespace ringhold
