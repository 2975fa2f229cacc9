// QCustomPlot's header, which needs Qt's keywords, in a program that does without them. Include this one.
#pragma once

#include <QtPrintSupport>
#include <QtWidgets>

#include <cmath>
#include <limits>

#define signals Q_SIGNALS
#define slots Q_SLOTS
#define emit Q_EMIT
#define foreach Q_FOREACH
#include <qcustomplot.h>
#undef signals
#undef slots
#undef emit
#undef foreach
