#include "ui/ware/checklist.h"

#include "ui/common/cell_delegate.h"
#include "ui/common/fresh_when_seen.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/session/preferences.h"
#include "ui/ware/checklist_model.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

Checklist::Checklist(Notebook& notebook, QUndoStack& undo, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_model(new ChecklistModel(notebook, undo, this)),
      m_list(new QListView), m_words(softLabel()), m_takeOut(new QPushButton(tr("Take the line &out"))),
      m_trouble(new Remark(Remark::Kind::warning)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_list->setModel(m_model);
    m_list->setItemDelegate(new CellDelegate(m_list));
    m_list->setWordWrap(true);
    m_list->setSpacing(2);
    m_list->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed);
    m_list->setAccessibleName(tr("To go through before lighting"));
    m_list->installEventFilter(this);
    column->addWidget(m_list, 1);
    column->addWidget(m_trouble);
    auto* foot = new QHBoxLayout;
    foot->addWidget(m_words, 1);
    m_takeOut->setAutoDefault(false);
    foot->addWidget(m_takeOut);
    column->addLayout(foot);
    connect(m_takeOut, &QPushButton::clicked, this, &Checklist::takeOut);
    connect(m_model, &ChecklistModel::tickedChanged, this, &Checklist::tell);
    connect(m_model, &ChecklistModel::troubled, m_trouble, &Remark::say);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, &Checklist::tell);
    m_fresh = new FreshWhenSeen(notebook, *this, [this] { m_model->reload(); });
    connect(m_model, &ChecklistModel::written, this, [this] {
        m_trouble->say({});
        m_fresh->tellOthers();
    });
    tell();
}

void Checklist::showFor(FiringId firing, bool flame) {
    m_model->showFor(firing, flame);
}

void Checklist::tell() {
    const int left = m_model->lineCount() - m_model->tickedCount();
    const auto through = m_model->goneThrough();
    const auto& preferences = m_notebook.preferences();
    m_words->setText(through ? tr("All was gone through on %1 at %2, as the firing’s log says.")
                                   .arg(preferences.date(*through), preferences.clockTime(*through))
                     : left == 0 ? tr("All is gone through.")
                                 : tr("%1 of %2 to go through. Space ticks; a line in the last row is added.")
                                       .arg(left)
                                       .arg(m_model->lineCount()));
    const int row = m_list->currentIndex().row();
    m_takeOut->setEnabled(row >= 0 && !m_model->isCaution(row) && !m_model->isNewRow(row));
}

void Checklist::takeOut() {
    m_model->remove(m_list->currentIndex().row());
}

bool Checklist::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_list && event->type() == QEvent::KeyPress &&
        static_cast<const QKeyEvent*>(event)->key() == Qt::Key_Delete) {
        takeOut();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace ringhold
