#include "ui/alarm/alarm_list.h"

#include "ui/alarm/alarm_list_model.h"
#include "ui/common/fitted_table.h"
#include "ui/common/tone.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QItemSelectionModel>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

AlarmList::AlarmList(LiveAlarms& alarms, Notebook& notebook, const Theme& theme, QWidget* parent)
    : QDialog(parent), m_alarms(alarms), m_notebook(notebook),
      m_model(new AlarmListModel(alarms, notebook, this)), m_table(new FittedTable),
      m_none(new QLabel(tr("No alarm so far in the firings that are live."))),
      m_acknowledge(new QPushButton(tr("&Acknowledge"))), m_all(new QPushButton(tr("Acknowledge a&ll"))) {
    setWindowTitle(tr("Alarms"));
    setModal(false);
    resize(980, 380);
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Alarms of all live firings"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setColumns({{10, 0}, {22, 1}, {12, 0}, {24, 1}, {26, 1}, {20, 3}});
    setTone(m_none, Tone::soft);
    auto* close = new QPushButton(tr("&Close"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_acknowledge);
    buttons->addWidget(m_all);
    buttons->addStretch(1);
    buttons->addWidget(close);
    for (auto* button : {m_acknowledge, m_all, close})
        button->setAutoDefault(false);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_none);
    column->addWidget(m_table, 1);
    column->addLayout(buttons);
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    connect(m_acknowledge, &QPushButton::clicked, this, &AlarmList::acknowledgeChosen);
    connect(m_all, &QPushButton::clicked, &alarms, &LiveAlarms::acknowledgeAll);
    connect(m_table, &QAbstractItemView::activated, this, &AlarmList::acknowledgeChosen);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, &AlarmList::refresh);
    connect(m_model, &QAbstractItemModel::modelReset, this, &AlarmList::refresh);
    connect(m_model, &QAbstractItemModel::dataChanged, this, &AlarmList::refresh);
    connect(&theme, &Theme::changed, m_table, [this] { m_table->resizeRowsToContents(); });
    refresh();
}

void AlarmList::open() {
    m_model->readBook();
    show();
    raise();
    activateWindow();
    if (!m_table->currentIndex().isValid() && m_model->rowCount() > 0)
        m_table->setCurrentIndex(m_model->index(0, 0));
    m_table->setFocus();
}

void AlarmList::acknowledgeChosen() {
    const auto current = m_table->currentIndex();
    if (!current.isValid())
        return;
    const auto row = m_model->row(current.row());
    for (const auto& session : m_notebook.sessions())
        if (session->record().firing.id == row.firing && row.mayAcknowledge)
            m_alarms.acknowledge(*session, row.cause);
}

void AlarmList::refresh() {
    const auto current = m_table->currentIndex();
    m_acknowledge->setEnabled(current.isValid() && m_model->row(current.row()).mayAcknowledge);
    bool any = false;
    for (int row = 0; row < m_model->rowCount(); ++row)
        any = any || m_model->row(row).mayAcknowledge;
    m_all->setEnabled(any);
    m_none->setVisible(m_model->rowCount() == 0);
    m_table->setVisible(m_model->rowCount() > 0);
    m_table->resizeRowsToContents();
}

} // namespace ringhold
