#include "ui/theme/theme.h"

#include <QApplication>
#include <QFile>
#include <QHash>
#include <QRegularExpression>
#include <QStyleFactory>

#include <algorithm>

namespace ringhold {

namespace {

// The second of each is taken where the first is not installed.
const QStringList textFamilies{QStringLiteral("Lato"), QStringLiteral("DejaVu Sans")};
const QStringList headingFamilies{QStringLiteral("Vollkorn"), QStringLiteral("DejaVu Serif")};

constexpr std::pair<const char*, TextSize> sizeWords[] = {{"smallText", TextSize::small},
                                                          {"bodyText", TextSize::body},
                                                          {"largeText", TextSize::large},
                                                          {"titleText", TextSize::title},
                                                          {"displayText", TextSize::display}};

QFont fontOf(const QStringList& families, QFont::StyleHint hint, double points, QFont::Weight weight) {
    QFont font(families);
    font.setStyleHint(hint);
    font.setPointSizeF(points);
    font.setWeight(weight);
    return font;
}

QString sheetFile() {
    QFile file(QStringLiteral(":/style.qss"));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

/// Puts values in the place of @words; a word without a value stays, which the tests catch.
QString filledIn(const QString& sheet, const QHash<QString, QString>& values) {
    static const QRegularExpression word(QStringLiteral("@(\\w+)"));
    QString filled;
    qsizetype from = 0;
    for (auto matches = word.globalMatch(sheet); matches.hasNext();) {
        const auto match = matches.next();
        filled += QStringView(sheet).mid(from, match.capturedStart() - from);
        filled += values.value(match.captured(1), match.captured(0));
        from = match.capturedEnd();
    }
    filled += QStringView(sheet).mid(from);
    return filled;
}

} // namespace

Theme::Theme(const Palettes& palettes, QObject* parent) : QObject(parent), m_palettes(palettes) {}

void Theme::wear(QApplication& application) {
    if (m_application != &application)
        QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    m_application = &application;
    QApplication::setFont(text(TextSize::body));
    QApplication::setPalette(widgetPalette());
    application.setStyleSheet(styleSheet());
}

/// The application first: its style sheet would undo the fonts that widgets take at changed().
void Theme::change() {
    if (m_application)
        wear(*m_application);
    Q_EMIT changed();
}

void Theme::show(ThemeName name) {
    if (name == m_name)
        return;
    m_name = name;
    change();
}

void Theme::setTextScale(double scale) {
    const double allowed = std::clamp(scale, smallestScale, largestScale);
    if (allowed == m_scale)
        return;
    m_scale = allowed;
    change();
}

double Theme::points(TextSize size) const {
    constexpr double atScaleOne[] = {9.5, 11, 15, 20, 40};
    return atScaleOne[static_cast<std::size_t>(size)] * m_scale;
}

QFont Theme::text(TextSize size, QFont::Weight weight) const {
    return fontOf(textFamilies, QFont::SansSerif, points(size), weight);
}

QFont Theme::heading(TextSize size, const QString& words) const {
    if (std::ranges::any_of(words, [](QChar c) { return c.isDigit(); }))
        return text(size, QFont::Bold);
    return fontOf(headingFamilies, QFont::Serif, points(size), QFont::DemiBold);
}

QPalette Theme::widgetPalette() const {
    const auto& c = palette();
    QPalette widgets(c.ink, c.page, c.page, c.edge, c.faint, c.ink, c.ink, c.page, c.table);
    widgets.setColor(QPalette::AlternateBase, c.table);
    widgets.setColor(QPalette::PlaceholderText, c.soft);
    widgets.setColor(QPalette::Highlight, c.band);
    widgets.setColor(QPalette::HighlightedText, c.ink);
    widgets.setColor(QPalette::ToolTipBase, c.page);
    widgets.setColor(QPalette::ToolTipText, c.ink);
    widgets.setColor(QPalette::Link, c.plan);
    widgets.setColor(QPalette::LinkVisited, c.plan);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        widgets.setColor(QPalette::Disabled, role, c.faint);
    return widgets;
}

QString Theme::styleSheet() const {
    static const QString sheet = sheetFile();
    QHash<QString, QString> values;
    for (const auto& role : paletteRoles())
        values.insert(QString::fromLatin1(role.name), (palette().*role.colour).name());
    for (const auto& [word, size] : sizeWords)
        values.insert(QString::fromLatin1(word), QString::number(points(size)) + QStringLiteral("pt"));
    return filledIn(sheet, values);
}

bool isDark(const QPalette& palette) {
    return palette.color(QPalette::WindowText).lightness() > palette.color(QPalette::Window).lightness();
}

} // namespace ringhold
