// What stands on a page, as tests compare it.
#pragma once

#include <QString>

#include <string>

class QWidget;

namespace ringhold::test {

/// With plain spaces instead of thin and narrow ones.
std::string plainWords(QString words);

/// All remarks in sight on the page.
QString warningsOn(const QWidget& page);

} // namespace ringhold::test
