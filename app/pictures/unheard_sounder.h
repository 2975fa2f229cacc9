// A sounder for where nobody listens.
#pragma once

#include "ui/sound/sounder.h"

namespace ringhold {

/// As if every sound were heard: pictures are not to say that this computer has none.
class UnheardSounder final : public Sounder {
  public:
    bool play(Sound) override { return true; }
    void stop() override {}
};

} // namespace ringhold
