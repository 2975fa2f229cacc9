#include "ui/exchange/file_exchange.h"

#include "ui/exchange/bring_window.h"

#include <QDropEvent>
#include <QFileDialog>
#include <QMimeData>
#include <QUrl>

namespace ringhold {

namespace {

QStringList localFiles(const QMimeData& data) {
    QStringList files;
    for (const QUrl& url : data.urls())
        if (url.isLocalFile())
            files << url.toLocalFile();
    return files;
}

} // namespace

FileExchange::FileExchange(Notebook& notebook, const Theme& theme, QWidget& window)
    : QObject(&window), m_notebook(notebook), m_theme(theme), m_window(window) {
    window.setAcceptDrops(true);
    window.installEventFilter(this);
}

void FileExchange::choose() {
    auto* dialog = new QFileDialog(&m_window, tr("Bring in a file"), {},
                                   tr("Readings and firings (*.csv *.tsv *.txt *.json);;All files (*)"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFile);
    connect(dialog, &QFileDialog::fileSelected, this, &FileExchange::open);
    dialog->open();
}

void FileExchange::open(const QString& file) {
    auto draft = FileDraft::open(file.toStdString());
    if (!draft) {
        Q_EMIT troubled(QString::fromStdString(draft.error().text()));
        return;
    }
    auto* window = new BringWindow(m_notebook, m_theme, std::move(*draft), &m_window);
    connect(window, &BringWindow::brought, this, &FileExchange::brought);
    window->show();
}

bool FileExchange::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::DragEnter && event->type() != QEvent::Drop)
        return QObject::eventFilter(watched, event);
    auto* drop = static_cast<QDropEvent*>(event);
    const QStringList files = localFiles(*drop->mimeData());
    if (files.isEmpty())
        return QObject::eventFilter(watched, event);
    drop->acceptProposedAction();
    if (event->type() == QEvent::Drop)
        for (const QString& file : files)
            open(file);
    return true;
}

} // namespace ringhold
