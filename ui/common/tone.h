// The tone of words, as the style sheet of the theme that is on colours it.
#pragma once

class QWidget;

namespace ringhold {

enum class Tone { ink, soft, forecast, warning };

/// A palette set on a label is lost when the theme changes; its tone is not.
void setTone(QWidget* label, Tone tone);

} // namespace ringhold
