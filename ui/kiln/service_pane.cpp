#include "ui/kiln/service_pane.h"

#include "ui/common/entry_table.h"
#include "ui/common/undo_buttons.h"
#include "ui/common/words_on_page.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

ServicePane::ServicePane(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_model(new ServiceModel(notebook, this)), m_table(new EntryTable),
      m_takeOut(new QPushButton(tr("Take a&way"))), m_trouble(new Remark(Remark::Kind::warning)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    auto* head = new QHBoxLayout;
    head->addWidget(softLabel(tr("New elements begin their health afresh from that day on. Wiring, gas and "
                                 "burners are for licensed trades.")),
                    1);
    m_takeOut->setAutoDefault(false);
    head->addWidget(m_takeOut);
    head->addWidget(new UndoButtons(m_model->undoStack(), *this));
    column->addLayout(head);
    m_table->setModel(m_model);
    m_table->setColumns({{12, 0}, {10, 0}, {10, 0}, {20, 1}});
    m_table->setAccessibleName(tr("Service log of this kiln"));
    column->addWidget(m_table, 1);
    column->addWidget(m_trouble);
    connect(m_model, &ServiceModel::troubled, m_trouble, &Remark::say);
    connect(m_model, &ServiceModel::written, this, [this] {
        m_trouble->say({});
        tellButtons();
        Q_EMIT written();
    });
    connect(m_takeOut, &QPushButton::clicked, this,
            [this] { m_model->takeOut(m_table->currentIndex().row()); });
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, &ServicePane::tellButtons);
    tellButtons();
}

ServicePane::~ServicePane() {
    m_model->undoStack().disconnect(this);
}

void ServicePane::show(std::optional<KilnId> kiln, std::vector<Probe> probes) {
    m_trouble->say({});
    m_model->show(kiln, std::move(probes));
    tellButtons();
}

void ServicePane::tellButtons() {
    const auto at = m_table->currentIndex();
    m_takeOut->setEnabled(at.isValid() && !m_model->isNewRow(at.row()));
}

} // namespace ringhold
