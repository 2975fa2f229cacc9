#include "ui/instrument/instrument_page.h"

#include "core/instrument/spec_text.h"
#include "ui/common/column_scroll.h"
#include "ui/common/fitted_table.h"
#include "ui/common/words_on_page.h"
#include "ui/instrument/field_form.h"
#include "ui/instrument/instrument_listening.h"
#include "ui/instrument/raw_lines_model.h"
#include "ui/session/instrument_of_firing.h"
#include "ui/session/notebook.h"

#include <QBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollBar>

namespace ringhold {

namespace {

constexpr int lookEvery_ms = 2000;
constexpr int schemeRole = Qt::UserRole;

} // namespace

InstrumentPage::InstrumentPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_kinds(new QListWidget), m_words(softLabel()),
      m_fields(new FieldForm), m_spec(new QLineEdit), m_fault(new Remark(Remark::Kind::warning)),
      m_listen(new QPushButton(tr("&Listen"))), m_use(new QPushButton(tr("&Use it"))), m_link(softLabel()),
      m_heard(new QLabel), m_lines(new RawLinesModel(notebook.preferences(), this)),
      m_listening(new InstrumentListening(notebook.clock(), this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    row->addWidget(makeChoice(), 5);
    row->addWidget(makeTrial(), 6);
    m_look.setInterval(lookEvery_ms);
    connect(&m_look, &QTimer::timeout, this, &InstrumentPage::lookForPorts);
    connect(m_kinds, &QListWidget::currentRowChanged, this, &InstrumentPage::takeKind);
    connect(m_fields, &FieldForm::changed, this, &InstrumentPage::tellSpec);
    connect(m_listen, &QPushButton::clicked, this, &InstrumentPage::toggleListening);
    connect(m_use, &QPushButton::clicked, this, &InstrumentPage::useIt);
    connect(m_listening, &InstrumentListening::line, this, [this](const QString& line, bool understood) {
        m_lines->addLine(m_notebook.clock().now(), line, understood);
        tellHeard();
    });
    connect(m_listening, &InstrumentListening::sample, this, [this](const Sample& sample) {
        m_lines->addSample(sample);
        tellHeard();
    });
    connect(m_listening, &InstrumentListening::linkChanged, this, &InstrumentPage::showLink);
    fillKinds();
}

QWidget* InstrumentPage::makeChoice() {
    QVBoxLayout* column = nullptr;
    auto* frame = sheet(column);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("Readings come from")));
    m_kinds->setAccessibleName(tr("Kinds of instrument"));
    m_kinds->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    m_kinds->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
    column->addWidget(m_kinds);
    column->addWidget(m_words);
    column->addWidget(new ColumnScroll(m_fields), 1);
    return frame;
}

QWidget* InstrumentPage::makeTrial() {
    QVBoxLayout* column = nullptr;
    auto* frame = sheet(column);
    column->addWidget(new Heading(m_theme, TextSize::title, tr("What it says")));
    m_spec->setReadOnly(true);
    m_spec->setAccessibleName(tr("The instrument as text, for the verb log"));
    m_spec->setToolTip(tr("The same text names this instrument on the command line"));
    column->addWidget(m_spec);
    column->addWidget(m_fault);
    auto* row = new QHBoxLayout;
    row->addWidget(m_listen);
    row->addWidget(m_link, 1);
    column->addLayout(row);
    auto* table = new FittedTable;
    table->setModel(m_lines);
    table->setColumns({{9, 0}, {16, 1}, {16, 1}});
    table->setAccessibleName(tr("Lines as they come"));
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    connect(m_lines, &QAbstractItemModel::rowsInserted, table, [table] {
        const auto* bar = table->verticalScrollBar();
        if (bar->value() >= bar->maximum() - 1)
            QMetaObject::invokeMethod(table, &QTableView::scrollToBottom, Qt::QueuedConnection);
    });
    column->addWidget(table, 1);
    m_heard->setAccessibleName(tr("How much was heard"));
    column->addWidget(m_heard);
    auto* last = new QHBoxLayout;
    last->addStretch(1);
    auto* back = new QPushButton(tr("&Back"));
    connect(back, &QPushButton::clicked, this, &InstrumentPage::finished);
    last->addWidget(back);
    last->addWidget(m_use);
    m_use->setDefault(true);
    column->addLayout(last);
    return frame;
}

void InstrumentPage::fillKinds() {
    auto* byHand = new QListWidgetItem(tr("Readings by hand"), m_kinds);
    byHand->setData(schemeRole, QString());
    for (const auto& kind : m_notebook.instruments().kinds()) {
        const QString scheme = QString::fromStdString(kind.scheme);
        auto* item = new QListWidgetItem(instrumentTitle(scheme), m_kinds);
        item->setData(schemeRole, scheme);
        item->setToolTip(QString::fromStdString(kind.example));
    }
}

void InstrumentPage::begin(FiringSession* session, const QString& specification) {
    stopListening();
    m_lines->clear();
    tellHeard();
    m_session = session;
    m_inUse = session ? instrumentOf(m_notebook, session->record().kiln.id) : QString();
    const auto spec = parseInstrumentSpec((session ? m_inUse : specification).toStdString());
    const QString scheme = spec ? QString::fromStdString(spec->scheme) : QString();
    for (int row = 0; row < m_kinds->count(); ++row)
        if (m_kinds->item(row)->data(schemeRole) == scheme)
            m_kinds->setCurrentRow(row);
    if (spec)
        m_fields->showSpec(*spec);
    lookForPorts();
    m_kinds->setFocus();
}

void InstrumentPage::takeKind(int row) {
    stopListening();
    const auto* item = m_kinds->item(row);
    const QString scheme = item ? item->data(schemeRole).toString() : QString();
    if (scheme.isEmpty()) {
        m_words->setText(
            tr("What you read off a meter goes on the writing line; the page reminds you when it is "
               "time for the next."));
        m_fields->hide();
    } else {
        m_words->setText(instrumentWords(scheme));
        m_fields->showKind(scheme);
        m_fields->show();
    }
    m_listen->setEnabled(!scheme.isEmpty());
    lookForPorts();
    tellSpec();
}

void InstrumentPage::lookForPorts() {
    m_fields->offerPorts(m_notebook.instruments().found());
}

QString InstrumentPage::specification() const {
    const auto* item = m_kinds->currentItem();
    if (!item || item->data(schemeRole).toString().isEmpty())
        return {};
    const auto text = specText(m_fields->spec());
    return text ? QString::fromStdString(*text) : QString();
}

void InstrumentPage::tellSpec() {
    const QString text = specification();
    if (m_spec->text() == text)
        return;
    m_spec->setText(text);
    m_spec->setCursorPosition(0);
    m_fault->say({});
    stopListening();
}

bool InstrumentPage::isInUse() const {
    return m_session && !m_inUse.isEmpty() && specification() == m_inUse;
}

void InstrumentPage::toggleListening() {
    if (m_listening->listens() || m_overheard)
        return stopListening();
    m_lines->clear();
    m_fault->say({});
    if (isInUse()) {
        m_overheard =
            connect(m_session, &FiringSession::rawLine, this, [this](const QString& line, bool understood) {
                m_lines->addLine(m_notebook.clock().now(), line, understood);
                tellHeard();
            });
        showLink(m_session->linkState(), m_session->linkDetail());
    } else {
        auto made = instrumentFor(m_notebook.instruments(), specification());
        const auto begun = made ? m_listening->start(std::move(*made)) : Status(made.error());
        if (!begun)
            return m_fault->say(QString::fromStdString(begun.error().text()));
    }
    m_listen->setText(tr("Stop &listening"));
    tellHeard();
}

void InstrumentPage::stopListening() {
    m_listening->stop();
    disconnect(m_overheard);
    m_overheard = {};
    m_listen->setText(tr("&Listen"));
    m_link->clear();
}

void InstrumentPage::showLink(LinkState state, const QString& detail) {
    const QString because = detail.isEmpty() ? QString() : QStringLiteral(": ") + detail;
    switch (state) {
    case LinkState::waiting:
        return m_link->setText(tr("Open, and waiting for it to speak") + because);
    case LinkState::connected:
        return m_link->setText(isInUse() ? tr("The firing hears it") : tr("It is heard"));
    case LinkState::lost:
        return m_link->setText(tr("No link%1. It is tried again and again.").arg(because));
    case LinkState::ended:
        return m_link->setText(tr("It has said all") + because);
    }
}

void InstrumentPage::tellHeard() {
    m_heard->setText(m_lines->summary());
}

void InstrumentPage::useIt() {
    const QString wanted = specification();
    stopListening(); // the firing is to have the port
    Status taken;
    if (m_session && !isInUse())
        taken = useInstrument(m_notebook, *m_session, wanted);
    else if (const auto made = instrumentFor(m_notebook.instruments(), wanted); !made)
        taken = made.error();
    if (!taken)
        return m_fault->say(QString::fromStdString(taken.error().text()));
    m_fault->say({});
    Q_EMIT chosen(wanted);
    Q_EMIT finished();
}

void InstrumentPage::showEvent(QShowEvent* event) {
    m_look.start();
    QWidget::showEvent(event);
}

void InstrumentPage::hideEvent(QHideEvent* event) {
    m_look.stop();
    stopListening();
    QWidget::hideEvent(event);
}

void InstrumentPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT finished();
    else
        QWidget::keyPressEvent(event);
}

} // namespace ringhold
