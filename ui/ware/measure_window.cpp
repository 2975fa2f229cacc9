#include "ui/ware/measure_window.h"

#include "ui/common/words_on_page.h"
#include "ui/ware/photo_view.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace ringhold {

namespace {

constexpr int mostRings = 12;

QString nextWords(std::optional<PhotoMark> next) {
    if (!next)
        return MeasureWindow::tr("All four marks are set. Drag one to mend it.");
    switch (*next) {
    case PhotoMark::knownFrom:
        return MeasureWindow::tr("1 of 4: mark one end of the length that you know, a ruler or a coin.");
    case PhotoMark::knownTo:
        return MeasureWindow::tr("2 of 4: mark its other end.");
    case PhotoMark::crystalFrom:
        return MeasureWindow::tr("3 of 4: mark one edge of what is to be measured.");
    case PhotoMark::crystalTo:
        return MeasureWindow::tr("4 of 4: mark the edge across from it.");
    }
    return {};
}

} // namespace

QString lengthWords(const PhotoLength& length) {
    const double error = 2 * length.sd_mm;
    const int decimals = error < 1 ? 1 : 0;
    return QStringLiteral("%1 mm ± %2")
        .arg(length.size_mm, 0, 'f', decimals)
        .arg(std::max(error, std::pow(10.0, -decimals)), 0, 'f', decimals);
}

MeasureWindow::MeasureWindow(const Theme& theme, const QString& what, const QImage& photo, QWidget* parent)
    : QDialog(parent), m_view(new PhotoView(theme)), m_next(new QLabel), m_what(new QComboBox),
      m_known(new QLineEdit(QStringLiteral("10"))), m_result(new QLabel),
      m_back(new QPushButton(tr("Take the last mark &back"))),
      m_keep(new QPushButton(tr("&Keep this size"))) {
    setWindowTitle(tr("Measure a crystal on %1").arg(what));
    resize(960, 700);
    auto* column = new QVBoxLayout(this);
    column->addWidget(new Heading(theme, TextSize::large, tr("Measure a crystal on %1").arg(what)));
    m_next->setWordWrap(true);
    column->addWidget(m_next);
    column->addWidget(m_view, 1);
    auto* caution =
        softLabel(tr("Lay the known length beside the crystal and hold the camera square above both. The "
                     "error counts how well marks can be set, not a slanting camera."));
    column->addWidget(caution);
    column->addLayout(makeFoot());
    connect(m_view, &PhotoView::marksChanged, this, &MeasureWindow::tell);
    connect(m_known, &QLineEdit::textChanged, this, &MeasureWindow::tell);
    connect(m_back, &QPushButton::clicked, m_view, &PhotoView::takeBack);
    connect(m_keep, &QPushButton::clicked, this, &MeasureWindow::keep);
    m_view->show(photo);
    m_view->setFocus();
}

QLayout* MeasureWindow::makeFoot() {
    auto* foot = new QHBoxLayout;
    m_what->addItem(tr("crystal"));
    for (int ring = 1; ring <= mostRings; ++ring)
        m_what->addItem(tr("ring %1").arg(ring));
    m_what->setItemText(1, tr("ring 1, the innermost"));
    m_what->setAccessibleName(tr("What is measured, from edge to edge"));
    m_what->setToolTip(m_what->accessibleName());
    foot->addWidget(m_what);
    auto* known = new QLabel(tr("K&nown length, mm"));
    known->setBuddy(m_known);
    foot->addWidget(known);
    m_known->setAccessibleName(tr("Known length in mm"));
    m_known->setMaximumWidth(90);
    foot->addWidget(m_known);
    m_result->setProperty("lettering", QStringLiteral("large"));
    foot->addWidget(m_result, 1, Qt::AlignCenter);
    auto* close = new QPushButton(tr("Close"));
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    for (auto* button : {m_back, close, m_keep}) {
        button->setAutoDefault(false);
        foot->addWidget(button);
    }
    return foot;
}

std::optional<int> MeasureWindow::ring() const {
    return m_what->currentIndex() > 0 ? std::optional(m_what->currentIndex() - 1) : std::nullopt;
}

QString MeasureWindow::what() const {
    return ring() ? tr("ring %1").arg(*ring() + 1) : tr("crystal");
}

double MeasureWindow::knownLength_mm() const {
    return m_known->text().replace(QLatin1Char(','), QLatin1Char('.')).toDouble();
}

Result<PhotoLength> MeasureWindow::length() const {
    MarkingError error;
    error.mark_px = m_view->markError_px();
    return measuredOn(m_view->marks(), knownLength_mm(), error);
}

void MeasureWindow::tell() {
    m_next->setText(nextWords(m_view->marks().next()));
    const auto found = length();
    m_back->setEnabled(m_view->marks().count() > 0);
    m_keep->setEnabled(found.ok());
    if (found)
        m_result->setText(lengthWords(*found));
    else if (m_view->marks().complete())
        m_result->setText(knownLength_mm() > 0 ? tr("The known length is too short on this photo.")
                                               : tr("The known length is a number of mm."));
    else
        m_result->clear();
}

void MeasureWindow::keep() {
    if (const auto found = length()) {
        Q_EMIT measured(*found);
        accept();
    }
}

} // namespace ringhold
