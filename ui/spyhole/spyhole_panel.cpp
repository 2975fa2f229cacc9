#include "ui/spyhole/spyhole_panel.h"

#include "ui/common/caution_line.h"
#include "ui/common/choice_row.h"
#include "ui/common/column_scroll.h"
#include "ui/common/tone.h"
#include "ui/common/words_on_page.h"
#include "ui/spyhole/hour_rows.h"
#include "ui/spyhole/spyhole_model.h"
#include "ui/spyhole/spyhole_view.h"

#include <QFontMetrics>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int minutesOffered[] = {0, 2, 5, 10};

/// The first time of day in bold: when the cone will be down is what the potter looks for.
QString withBoldTime(const QString& words) {
    static const QRegularExpression time(QStringLiteral("\\d\\d:\\d\\d"));
    QString html = words.toHtmlEscaped();
    const auto first = time.match(html);
    if (first.hasMatch())
        html.replace(first.capturedStart(), 5, QStringLiteral("<b>%1</b>").arg(first.captured()));
    return html.replace(QLatin1Char('\n'), QStringLiteral("<br>"));
}

} // namespace

SpyholePanel::SpyholePanel(const Theme& theme, SpyholeModel& model, QWidget* parent)
    : QFrame(parent), m_theme(theme), m_model(model), m_view(new SpyholeView(theme)),
      m_rows(new HourRows(theme)), m_packPlace(new QVBoxLayout), m_place(softLabel()), m_time(softLabel()),
      m_clock(new QLineEdit), m_typed(new QLineEdit), m_trouble(new Remark(Remark::Kind::warning)),
      m_effect(new QLabel), m_doubts(new Remark(Remark::Kind::warning)),
      m_write(new QPushButton(tr("Write the look"))), m_leave(new QPushButton(tr("Leave it"))) {
    m_minutes = new ChoiceRow(
        tr("Looked"),
        {{tr("now"), {}}, {tr("2"), tr("2 min ago")}, {tr("5"), tr("5 min ago")}, {tr("10 min ago"), {}}});
    setAccessibleName(tr("A look through the spyhole"));
    setProperty("card", true);
    m_write->setDefault(true);
    auto* sides = new QHBoxLayout;
    sides->setSpacing(36);
    sides->addWidget(m_view, 10);
    sides->addWidget(makeEntry(), 11);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(28, 18, 24, 18);
    all->addLayout(makeTop());
    all->addLayout(sides, 1);
    all->addLayout(makeFoot());
    connectModel();
    showPacks();
    showEntered();
}

QLayout* SpyholePanel::makeTop() {
    m_place->setWordWrap(false);
    auto* row = new QHBoxLayout;
    row->addWidget(new Heading(m_theme, TextSize::title, tr("A look through the spyhole")));
    row->addStretch();
    row->addWidget(m_place);
    row->addLayout(m_packPlace);
    return row;
}

QLayout* SpyholePanel::makeTimeRow() {
    m_clock->setPlaceholderText(tr("or at 18:03"));
    m_clock->setAccessibleName(tr("Looked at what time of day"));
    m_time->setWordWrap(false);
    const auto fit = [this] {
        const QFontMetrics metrics(m_theme.text(TextSize::body));
        m_clock->setFixedWidth(metrics.horizontalAdvance(m_clock->placeholderText()) + 24);
    };
    connect(&m_theme, &Theme::changed, this, fit);
    fit();
    auto* row = new QHBoxLayout;
    row->addWidget(m_time);
    row->addSpacing(6);
    row->addWidget(m_minutes);
    row->addWidget(m_clock);
    row->addStretch();
    return row;
}

/// Always in sight, however long the column is.
QLayout* SpyholePanel::makeFoot() {
    auto* eyes =
        new CautionLine(m_theme, tr("Eyes."),
                        tr("Infrared-rated eyewear, chosen with its supplier and to local rules, every "
                           "time. Stand back from the port; do not hunt for a cone in the glare."));
    auto* row = new QHBoxLayout;
    row->setSpacing(12);
    row->addWidget(eyes, 1);
    row->addSpacing(24);
    row->addWidget(m_write);
    row->addWidget(m_leave);
    return row;
}

/// From top to bottom as the Tab key goes.
QWidget* SpyholePanel::makeEntry() {
    m_typed->setPlaceholderText(tr("Type it: 10 3.5, or choose below"));
    m_typed->setAccessibleName(tr("Type a look: cone, space, hour"));
    m_effect->setTextFormat(Qt::RichText);
    m_effect->setWordWrap(true);
    m_effect->setProperty("ground", QStringLiteral("forecast"));
    auto* help =
        softLabel(tr("The hour that the tip points to; 6 is down. Halves count. A tip can be pulled too. "
                     "Keys: 9 4 and Enter; 10 0.5 is just leaning."));
    auto* entry = new QWidget;
    auto* column = new QVBoxLayout(entry);
    column->setContentsMargins(0, 0, 4, 0);
    column->setSpacing(11);
    column->addWidget(m_typed);
    column->addWidget(m_trouble);
    column->addWidget(m_rows);
    column->addLayout(makeTimeRow());
    column->addWidget(help);
    column->addWidget(m_effect);
    column->addWidget(m_doubts);
    column->addStretch();
    return new ColumnScroll(entry);
}

void SpyholePanel::connectModel() {
    connect(&m_model, &SpyholeModel::packsChanged, this, &SpyholePanel::showPacks);
    connect(&m_model, &SpyholeModel::changed, this, &SpyholePanel::showEntered);
    connect(m_rows, &HourRows::chosen, &m_model, &SpyholeModel::enter);
    connect(m_view, &SpyholeView::pulled, &m_model, &SpyholeModel::enter);
    connect(m_view, &SpyholeView::picked, m_rows, &HourRows::focusOn);
    connect(m_typed, &QLineEdit::textEdited, &m_model, &SpyholeModel::setTyped);
    connect(m_minutes, &ChoiceRow::chosen, this, &SpyholePanel::chooseTime);
    connect(m_clock, &QLineEdit::textEdited, this, [this](const QString& text) {
        if (text.isEmpty())
            m_model.setTime(MinutesAgo{});
        else
            m_model.setTime(ClockTime{text});
    });
    const auto mended = [this] { m_trouble->say({}); };
    connect(m_rows, &HourRows::chosen, this, mended);
    connect(m_view, &SpyholeView::pulled, this, mended);
    connect(m_typed, &QLineEdit::textEdited, this, mended);
    connect(m_minutes, &ChoiceRow::chosen, this, mended);
    connect(m_clock, &QLineEdit::textEdited, this, mended);
    connect(m_write, &QPushButton::clicked, this, &SpyholePanel::write);
    connect(m_leave, &QPushButton::clicked, this, &SpyholePanel::leave);
}

void SpyholePanel::begin() {
    m_typed->setFocus(Qt::OtherFocusReason);
}

void SpyholePanel::showPacks() {
    delete m_packs;
    std::vector<ChoiceRow::Choice> places;
    for (const auto& pack : m_model.packs())
        places.push_back(
            {QString::fromStdString(pack.place), tr("Pack: %1").arg(QString::fromStdString(pack.place))});
    m_packs = new ChoiceRow(tr("Pack"), places);
    m_packs->setCurrent(static_cast<int>(m_model.currentPack()));
    connect(m_packs, &ChoiceRow::chosen, this, [this](std::optional<int> pack) {
        m_model.setCurrentPack(static_cast<std::size_t>(pack.value_or(0)));
    });
    m_packPlace->addWidget(m_packs);
    m_packs->setVisible(places.size() > 1);
    m_place->setVisible(places.size() == 1);
    m_place->setText(places.empty() ? QString() : places.front().text);

    QStringList cones;
    if (m_model.currentPack() < m_model.packs().size())
        for (const auto& cone : m_model.packs()[m_model.currentPack()].cones)
            cones += QString::fromStdString(cone);
    m_rows->setCones(cones, m_model.fitNotes());
    orderTabs();
}

/// Along the page: pack, typing line, rows, time, buttons.
void SpyholePanel::orderTabs() {
    QWidget* last = m_packs;
    const auto next = [&last](QWidget* widget) {
        setTabOrder(last, widget);
        last = widget;
    };
    const auto along = [&next](const ChoiceRow* row) {
        for (int i = 0; i < row->count(); ++i)
            next(row->button(i));
    };
    along(m_packs);
    next(m_typed);
    for (std::size_t cone = 0; cone < m_rows->count(); ++cone)
        along(m_rows->row(cone));
    along(m_minutes);
    next(m_clock);
    next(m_write);
    next(m_leave);
}

void SpyholePanel::showEntered() {
    m_view->setPack(m_model.drawing());
    for (std::size_t cone = 0; cone < m_rows->count(); ++cone)
        m_rows->setHour(cone, m_model.entered(cone));
    if (m_typed->text() != m_model.typed())
        m_typed->setText(m_model.typed());
    showTime();
    m_effect->setText(withBoldTime(m_model.previewWords()));
    m_doubts->say(m_model.doubts().join(QLatin1Char('\n')));
    m_write->setText(m_model.looks().size() > 1 ? tr("Write the looks") : tr("Write the look"));
    m_write->setEnabled(m_model.canWrite());
}

void SpyholePanel::showTime() {
    const auto* ago = std::get_if<MinutesAgo>(&m_model.time());
    const auto* offered =
        std::ranges::find(minutesOffered, ago && !m_model.timeIsTyped() ? ago->minutes : -1);
    m_minutes->setCurrent(offered == std::end(minutesOffered)
                              ? std::nullopt
                              : std::optional(static_cast<int>(offered - minutesOffered)));
    if (ago)
        m_clock->clear();
    m_time->setText(m_model.atWords());
}

void SpyholePanel::chooseTime(std::optional<int> choice) {
    m_model.setTime(MinutesAgo{minutesOffered[static_cast<std::size_t>(choice.value_or(0))]});
}

void SpyholePanel::write() {
    if (const auto done = m_model.write(); !done) {
        m_trouble->say(QString::fromStdString(done.error().text()));
        return;
    }
    Q_EMIT finished();
}

void SpyholePanel::leave() {
    m_model.clear();
    Q_EMIT finished();
}

void SpyholePanel::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (event->key() == Qt::Key_Escape || (enter && m_leave->hasFocus()))
        leave();
    else if (enter)
        write();
    else
        QFrame::keyPressEvent(event);
}

} // namespace ringhold
