// The looks of a live firing that do not fit, each with what it would mean and a way to strike it out.
#pragma once

#include "core/firing/records.h"

#include <QWidget>

#include <vector>

class QFrame;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace ringhold {

class FiringSession;
class Preferences;

/// There only while there is a doubt. Session and preferences outlive it.
class DoubtList : public QWidget {
    Q_OBJECT

  public:
    DoubtList(FiringSession& session, const Preferences& preferences, QWidget* parent = nullptr);

  Q_SIGNALS:
    /// A look could not be struck: said in words.
    void troubled(const QString& what);

  private:
    void refresh();
    void addLine(LookId look);

    FiringSession& m_session;
    const Preferences& m_preferences;
    QVBoxLayout* m_lines;
    struct Line {
        LookId look{};
        QFrame* frame = nullptr;
        QLabel* words = nullptr;
        QPushButton* strike = nullptr;
    };
    std::vector<Line>
        m_shown; ///< kept while the same looks are doubted, so that the keyboard stays where it is
};

} // namespace ringhold
