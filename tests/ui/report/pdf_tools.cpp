#include "tests/ui/report/pdf_tools.h"

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryFile>
#include <gtest/gtest.h>

namespace ringhold::test {

namespace {

QByteArray run(const char* program, const QStringList& arguments) {
    QProcess process;
    process.start(QString::fromLatin1(program), arguments, QIODevice::ReadOnly);
    EXPECT_TRUE(process.waitForFinished(60'000)) << program;
    EXPECT_EQ(process.exitCode(), 0) << program << ": " << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput();
}

QStringList linesAfterHead(const QByteArray& table) {
    auto lines = QString::fromUtf8(table).split(u'\n', Qt::SkipEmptyParts);
    return lines.mid(2);
}

} // namespace

SeenPdf::SeenPdf(const QByteArray& pdf) {
    QTemporaryFile file(QDir::tempPath() + QStringLiteral("/report-XXXXXX.pdf"));
    file.setAutoRemove(false);
    EXPECT_TRUE(file.open());
    file.write(pdf);
    m_file = file.fileName();
}

SeenPdf::~SeenPdf() {
    QFile::remove(m_file);
}

QString SeenPdf::text() const {
    return QString::fromUtf8(run("pdftotext", {QStringLiteral("-layout"), m_file, QStringLiteral("-")}));
}

QString SeenPdf::info() const {
    return QString::fromUtf8(run("pdfinfo", {m_file}));
}

int SeenPdf::pages() const {
    static const QRegularExpression count(QStringLiteral("Pages:\\s+(\\d+)"));
    return count.match(info()).captured(1).toInt();
}

QStringList SeenPdf::fonts() const {
    return linesAfterHead(run("pdffonts", {m_file}));
}

int SeenPdf::images() const {
    return static_cast<int>(linesAfterHead(run("pdfimages", {QStringLiteral("-list"), m_file})).size());
}

QImage SeenPdf::page(int number, int dpi) const {
    const QString page = QString::number(number);
    return QImage::fromData(run("pdftoppm", {QStringLiteral("-r"), QString::number(dpi), QStringLiteral("-f"),
                                             page, QStringLiteral("-l"), page, m_file}));
}

} // namespace ringhold::test
