// Lines of text that some other program appends to a file.
#pragma once

#include "app/instruments/line_instrument.h"

#include <QFile>
#include <QFileSystemWatcher>

namespace ringhold {

/// What is in the file when it is first opened is past, of unknown times, and is passed over. A file that
/// shrinks, or is replaced by another of its name, is read from its beginning; one that is not there yet is
/// waited for.
class FollowInstrument final : public LineInstrument {
  public:
    FollowInstrument(QString path, const LineFormat& format, const Clock& clock);
    ~FollowInstrument() override;
    std::string description() const override;

  private:
    void connectDevice() override;
    void disconnectDevice() override;
    void look();
    void readOn();
    bool startsMidLine();

    QString m_path;
    QFile m_file;
    bool m_passOverOld = true; ///< until the file was first opened or found missing
    QFileSystemWatcher m_watcher;
    QTimer m_poll; ///< for file systems that tell no changes
};

} // namespace ringhold
