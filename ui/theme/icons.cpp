#include "ui/theme/icons.h"

#include "ui/theme/theme.h"

#include <QDir>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>

namespace ringhold {

namespace {

/// Draws from the lines of the file at every size, so that it is sharp on every screen.
class InkIconEngine : public QIconEngine {
  public:
    InkIconEngine(const Theme& theme, QByteArray svg) : m_theme(theme), m_svg(std::move(svg)) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        const auto& palette = m_theme.palette();
        const QColor& ink = mode == QIcon::Disabled ? palette.faint : palette.ink;
        QByteArray drawn = m_svg;
        QSvgRenderer(drawn.replace("#000000", ink.name().toLatin1())).render(painter, rect);
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paint(&painter, QRect(QPoint(), size), mode, state);
        return pixmap;
    }

    QIconEngine* clone() const override { return new InkIconEngine(*this); }

  private:
    const Theme& m_theme;
    QByteArray m_svg;
};

const QString folder = QStringLiteral(":/icons/");

} // namespace

QIcon icon(const Theme& theme, const QString& name) {
    QFile file(folder + name + QStringLiteral(".svg"));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    return QIcon(new InkIconEngine(theme, file.readAll()));
}

QStringList iconNames() {
    QStringList names;
    for (const auto& file : QDir(folder).entryInfoList())
        names += file.baseName();
    return names;
}

} // namespace ringhold
