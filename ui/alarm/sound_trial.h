// Tries the sound at the start of each firing, so that it is known whether an alarm will be heard.
#pragma once

#include "core/firing/records.h"

#include <QFrame>

#include <vector>

class QLabel;
class QPushButton;

namespace ringhold {

class AlarmCaller;
class FiringSession;
class Notebook;

/// "Did you hear it?", in the way of nothing. The answer is a line of the log of each firing that it was
/// asked for. Notebook and caller outlive it.
class SoundTrial : public QFrame {
    Q_OBJECT

  public:
    /// A firing that is resumed is asked about no more if its log has the answer.
    SoundTrial(Notebook& notebook, AlarmCaller& caller, QWidget* parent = nullptr);

  private:
    void matchSessions();
    void ask();
    void answer(bool heard);

    Notebook& m_notebook;
    AlarmCaller& m_caller;
    QLabel* m_words;
    QPushButton* m_yes;
    QPushButton* m_no;
    std::vector<FiringId> m_known;  ///< asked about or answered
    std::vector<FiringId> m_asking; ///< without an answer yet
    bool m_silent = false;          ///< no device took the last sound
};

} // namespace ringhold
