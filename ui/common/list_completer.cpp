#include "ui/common/list_completer.h"

namespace ringhold {

ListCompleter::ListCompleter(const QStringList& words, const QString& separators, QObject* parent)
    : QCompleter(words, parent), m_separators(separators) {
    setCompletionMode(QCompleter::InlineCompletion);
    setCaseSensitivity(Qt::CaseInsensitive);
}

qsizetype ListCompleter::lastWord(const QString& line) const {
    qsizetype at = line.size();
    while (at > 0 && !m_separators.contains(line[at - 1]))
        --at;
    while (at < line.size() && line[at].isSpace())
        ++at;
    return at;
}

QStringList ListCompleter::splitPath(const QString& line) const {
    const QString word = line.mid(lastWord(line));
    // an empty word would be completed to the first of all
    return {word.isEmpty() ? QStringLiteral("\n") : word};
}

QString ListCompleter::pathFromIndex(const QModelIndex& index) const {
    const QString line = completionPrefix();
    return line.first(lastWord(line)) + QCompleter::pathFromIndex(index);
}

} // namespace ringhold
