// The lines that an instrument sends, as they come, with what each was understood as.
#pragma once

#include "core/instrument/instrument.h"

#include <QAbstractTableModel>

#include <deque>

namespace ringhold {

class Preferences;

/// The newest line is the last row; only the last ones are kept, all are counted. Preferences outlive it.
class RawLinesModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Time, Line, Understood, columns };
    static constexpr int mostRows = 200;

    explicit RawLinesModel(const Preferences& preferences, QObject* parent = nullptr);

    void clear();
    void addLine(Instant at, const QString& line, bool understood);
    /// What the last line said; a line of its own from an instrument that sends no text.
    void addSample(const Sample& sample);

    int heard() const { return m_heard; }
    int unread() const { return m_unread; }
    /// "12 lines, 1 of them cannot be read".
    QString summary() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

  private:
    struct Row {
        Instant at;
        QString line;
        bool understood = true;
        std::vector<Sample> samples{};
    };
    void append(Row row);
    QString decoded(const Row& row) const;

    const Preferences& m_preferences;
    std::deque<Row> m_rows;
    bool m_sendsText = false;
    int m_heard = 0;
    int m_unread = 0;
};

} // namespace ringhold
