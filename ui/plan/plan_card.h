// The plan card on paper, in type large enough to key it in from.
#pragma once

#include "ui/plan/plan_card_words.h"

#include <QPageLayout>

#include <filesystem>

class QPagedPaintDevice;

namespace ringhold {

/// Paints it, on as many pages as it needs, within the margins that the device has. False when the device
/// cannot be painted on.
bool paintPlanCard(QPagedPaintDevice& device, const PlanCardWords& words);

/// As a PDF with its fonts in it. unwritable when the disk does not take it; an older file is then as it was.
Status writePlanCard(const std::filesystem::path& file, const PlanCardWords& words, const QPageSize& size);

/// Upright, with margins that every printer can keep.
QPageLayout planCardLayout(const QPageSize& size);

/// A4 or Letter, as this computer's locale has it.
QPageSize usualPageSize();

} // namespace ringhold
