// Pictures of every page of the window.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <QString>

#include <vector>

namespace ringhold {

class MainWindow;
class Notebook;
class PracticeInstrument;
class SteppedClock;
class Theme;

/// Lets the firing on that practice kiln go on by so much, a minute at a time, and the window with it.
void liveThrough(PracticeInstrument& kiln, SteppedClock& clock, Duration time);

/// As a potter would before the pictures: every alarm is acknowledged, and the trial of the sound answered.
void answerAll(Notebook& notebook, MainWindow& window);

struct PictureWish {
    QString folder;
    std::vector<int> pixelRatios{1};
};

/// Every spread with all of its tabs, and what opens by keys from the firing: spyhole and instruments. The
/// window is in sight, the theme that of the running application and paper afterwards. Gives how many
/// pictures there are.
Result<int> picturePages(MainWindow& window, Theme& theme, const PictureWish& wish);

} // namespace ringhold
