// Completes the last of several words in one line.
#pragma once

#include <QCompleter>

namespace ringhold {

/// "pinholes, du" is completed to "pinholes, dull": words are parted by one of the separators.
class ListCompleter : public QCompleter {
    Q_OBJECT

  public:
    ListCompleter(const QStringList& words, const QString& separators, QObject* parent = nullptr);
    QStringList splitPath(const QString& line) const override;
    QString pathFromIndex(const QModelIndex& index) const override;

  private:
    /// Where the last word begins.
    qsizetype lastWord(const QString& line) const;

    QString m_separators;
};

} // namespace ringhold
