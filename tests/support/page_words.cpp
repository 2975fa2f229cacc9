#include "tests/support/page_words.h"

#include "ui/common/words_on_page.h"

namespace ringhold::test {

std::string plainWords(QString words) {
    for (const char16_t space : {u'\u2009', u'\u202f', u'\u00a0'})
        words.replace(QChar(space), QLatin1Char(' '));
    return words.toStdString();
}

QString warningsOn(const QWidget& page) {
    QStringList all;
    for (const auto* remark : page.findChildren<Remark*>())
        if (remark->isVisible())
            all << remark->text();
    return all.join(QLatin1Char(' '));
}

} // namespace ringhold::test
