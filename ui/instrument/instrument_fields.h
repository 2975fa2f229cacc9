// What is to be filled in for each kind of instrument.
#pragma once

#include <QString>

#include <utility>
#include <vector>

namespace ringhold {

struct InstrumentField {
    enum class Kind { text, choice, port, file };

    QString parameter; ///< of the specification; empty: its target
    QString words;
    Kind kind = Kind::text;
    QString usual; ///< what holds when the parameter is not told
    /// Of a choice: value and what it says. Any of them may be typed as well where the values are numbers.
    std::vector<std::pair<QString, QString>> choices{};
    QString example{}; ///< in the empty field
};

/// "Serial line" for "serial"; the scheme itself for one that is not known here.
QString instrumentTitle(const QString& scheme);
/// What such an instrument is, in a sentence.
QString instrumentWords(const QString& scheme);
/// In their order; a scheme that is not known here has its target alone.
std::vector<InstrumentField> instrumentFields(const QString& scheme);

} // namespace ringhold
