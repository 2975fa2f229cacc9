// Where readings come from: the instruments there are, tried out before one is used.
#pragma once

#include "core/instrument/instrument_factory.h"

#include <QPointer>
#include <QTimer>
#include <QWidget>

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace ringhold {

class FieldForm;
class FiringSession;
class InstrumentListening;
class Notebook;
class RawLinesModel;
class Remark;
class Theme;

/// A page, no box: a firing goes on meanwhile. Notebook and theme outlive it.
class InstrumentPage : public QWidget {
    Q_OBJECT

  public:
    InstrumentPage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// For that live firing, or, without one, for a firing that is to begin. Shows what it has now.
    void begin(FiringSession* session, const QString& specification);
    /// As it stands; empty: readings by hand.
    QString specification() const;

  Q_SIGNALS:
    /// The potter wants this one; a live firing listens to it already.
    void chosen(const QString& specification);
    /// Nothing more to do here.
    void finished();

  protected:
    void hideEvent(QHideEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QWidget* makeChoice();
    QWidget* makeTrial();
    void fillKinds();
    void takeKind(int row);
    void lookForPorts();
    void tellSpec();
    void toggleListening();
    void stopListening();
    void showLink(LinkState state, const QString& detail);
    void tellHeard();
    void useIt();
    /// Whether the firing has this very instrument: its lines are then shown without opening it twice.
    bool isInUse() const;

    Notebook& m_notebook;
    const Theme& m_theme;
    QPointer<FiringSession> m_session;
    QString m_inUse;
    QListWidget* m_kinds;
    QLabel* m_words;
    FieldForm* m_fields;
    QLineEdit* m_spec;
    Remark* m_fault;
    QPushButton* m_listen;
    QPushButton* m_use;
    QLabel* m_link;
    QLabel* m_heard;
    RawLinesModel* m_lines;
    InstrumentListening* m_listening;
    QMetaObject::Connection m_overheard; ///< the firing's own lines
    QTimer m_look;
};

} // namespace ringhold
