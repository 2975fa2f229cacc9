// The loudspeaker of this computer.
#pragma once

#include "ui/sound/sounder.h"

#include <memory>

namespace ringhold {

/// Looks for the device each time, so that one that is plugged in later is found.
class AudioSounder final : public Sounder {
  public:
    AudioSounder();
    ~AudioSounder() override;
    AudioSounder(const AudioSounder&) = delete;
    AudioSounder& operator=(const AudioSounder&) = delete;

    bool play(Sound sound) override;
    void stop() override;

  private:
    struct Playing;
    std::unique_ptr<Playing> m_playing;
};

} // namespace ringhold
