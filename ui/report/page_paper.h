// The papers that pages are made for. All measures are in points (1/72 inch).
#pragma once

#include <QPageSize>
#include <QRectF>
#include <QString>

#include <optional>

namespace ringhold {

enum class Paper { a4, letter };

/// "a4" or "letter", in any case.
std::optional<Paper> paperNamed(const QString& name);
/// The paper that this computer's country uses.
Paper usualPaper();
/// Letter for a printer that is set to it, otherwise A4.
Paper paperOf(const QPageSize& size);

QPageSize pageSize(Paper paper);
QSizeF sheetOf(Paper paper);
/// Where text goes: the left margin leaves room for a binder's holes.
QRectF bodyOf(Paper paper);

} // namespace ringhold
