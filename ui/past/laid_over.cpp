#include "ui/past/laid_over.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("LaidOver", words);
}

std::optional<Instant> zeroOf(const OpenedFiring& firing, Alignment alignment) {
    if (firing.control.empty())
        return std::nullopt;
    switch (alignment) {
    case Alignment::start:
        return std::min(firing.record.firing.began, firing.control.front().at);
    case Alignment::coneDown:
        return firing.figures.coneDown;
    case Alignment::growthHold:
        return firing.figures.growthHold ? std::optional(firing.figures.growthHold->start) : std::nullopt;
    }
    return std::nullopt;
}

QString unalignedWords(Alignment alignment) {
    switch (alignment) {
    case Alignment::start:
        return tr("no readings");
    case Alignment::coneDown:
        return tr("no look found the firing cone down");
    case Alignment::growthHold:
        return tr("no growth hold was found");
    }
    return {};
}

} // namespace

std::vector<LaidFiring> layOver(std::vector<std::shared_ptr<const OpenedFiring>> firings,
                                Alignment alignment) {
    std::vector<LaidFiring> laid;
    for (auto& firing : firings) {
        LaidFiring next;
        next.zero = zeroOf(*firing, alignment);
        const auto& first = laid.empty() ? firing : laid.front().firing;
        next.comparable = laid.empty() || (firing->offset && first->offset) ||
                          (firing->probe && first->probe && firing->probe->id == first->probe->id);
        next.firing = std::move(firing);
        laid.push_back(std::move(next));
    }
    return laid;
}

QString layName(std::size_t index) {
    return QString(QChar(u'A' + static_cast<char16_t>(index)));
}

QString layRemarks(const std::vector<LaidFiring>& laid, Alignment alignment) {
    QStringList unaligned;
    QStringList other;
    for (std::size_t i = 0; i < laid.size(); ++i) {
        if (!laid[i].zero)
            unaligned << layName(i);
        if (!laid[i].comparable)
            other << layName(i);
    }
    QStringList remarks;
    if (!other.isEmpty())
        remarks << tr("%1: not known to be by the same probe as A. Temperatures of different probes are not "
                      "to be compared "
                      "uncorrected.")
                       .arg(other.join(QStringLiteral(", ")));
    if (!unaligned.isEmpty())
        remarks << tr("%1: not drawn, as %2.")
                       .arg(unaligned.join(QStringLiteral(", ")), unalignedWords(alignment));
    return remarks.join(QLatin1Char(' '));
}

} // namespace ringhold
