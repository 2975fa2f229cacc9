// What other programs see in a PDF of ours (poppler's tools).
#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QStringList>

namespace ringhold::test {

/// A PDF in a file of its own, looked at from outside.
class SeenPdf {
  public:
    explicit SeenPdf(const QByteArray& pdf);
    ~SeenPdf();
    SeenPdf(const SeenPdf&) = delete;

    QString text() const;                   ///< pdftotext, in reading order, lines joined by '\n'
    QString info() const;                   ///< pdfinfo
    int pages() const;                      ///< of it
    QStringList fonts() const;              ///< pdffonts, a line each
    int images() const;                     ///< pdfimages
    QImage page(int number, int dpi) const; ///< pdftoppm, from 1

  private:
    QString m_file;
};

} // namespace ringhold::test
