#include "ui/ware/photo_bar.h"

#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"
#include "ui/ware/measure_window.h"
#include "ui/ware/photo_view.h"

#include <QDragEnterEvent>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QListView>
#include <QMimeData>
#include <QPushButton>
#include <QUndoStack>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

QStringList localFiles(const QMimeData& data) {
    QStringList files;
    for (const QUrl& url : data.urls())
        if (url.isLocalFile())
            files << url.toLocalFile();
    return files;
}

/// A photo that comes or goes; it keeps the picture meanwhile.
class PhotoChange : public QUndoCommand {
  public:
    PhotoChange(PhotoModel& model, Photo photo, std::vector<PhotoMeasure> measures, bool in,
                const QString& what)
        : QUndoCommand(what), m_model(model), m_photo(std::move(photo)), m_measures(std::move(measures)),
          m_in(in) {}
    void redo() override { go(m_in); }
    void undo() override { go(!m_in); }

  private:
    void go(bool in) {
        if (std::exchange(m_done, true) || !m_in)
            setObsolete(!(in ? m_model.putBack(m_photo, m_measures) : m_model.takeAway(m_photo.id)));
    }

    PhotoModel& m_model;
    Photo m_photo;
    std::vector<PhotoMeasure> m_measures;
    bool m_in;
    bool m_done = false; ///< one that was just taken is in the book already
};

} // namespace

PhotoBar::PhotoBar(Notebook& notebook, QUndoStack& undo, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_undo(undo), m_theme(theme),
      m_model(new PhotoModel(notebook, this)), m_list(new QListView), m_words(softLabel()),
      m_add(new QPushButton(tr("&Add photos …"))), m_measure(new QPushButton(tr("&Measure …"))),
      m_takeAway(new QPushButton(tr("Take a&way"))), m_chooseFiles([this] {
          return QFileDialog::getOpenFileNames(this, tr("Photos of %1").arg(m_name), {},
                                               tr("Pictures (*.jpg *.jpeg *.png *.webp *.tif *.tiff *.bmp)"));
      }) {
    setAcceptDrops(true);
    m_list->setModel(m_model);
    m_list->setViewMode(QListView::IconMode);
    m_list->setFlow(QListView::LeftToRight);
    m_list->setWrapping(false);
    m_list->setMovement(QListView::Static);
    m_list->setIconSize({PhotoModel::thumbnailSide_px, PhotoModel::thumbnailSide_px});
    m_list->setSpacing(4);
    m_list->setFixedHeight(PhotoModel::thumbnailSide_px + 30);
    m_list->setToolTip(tr("Enter measures on a photo, F2 writes its caption"));
    m_list->setEditTriggers(QAbstractItemView::EditKeyPressed);
    m_list->setAccessibleName(tr("Photos of the piece; F2 writes a caption"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    auto* shown = new QVBoxLayout;
    shown->addWidget(m_words);
    shown->addWidget(m_list);
    shown->addStretch(1);
    row->addLayout(shown, 1);
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(4);
    for (auto* button : {m_add, m_measure, m_takeAway}) {
        button->setAutoDefault(false);
        buttons->addWidget(button);
    }
    buttons->addStretch(1);
    row->addLayout(buttons);
    connect(m_add, &QPushButton::clicked, this, [this] { addFiles(m_chooseFiles()); });
    connect(m_measure, &QPushButton::clicked, this, &PhotoBar::measure);
    connect(m_list, &QListView::activated, this, &PhotoBar::measure);
    connect(m_takeAway, &QPushButton::clicked, this, &PhotoBar::takeAway);
    connect(m_model, &PhotoModel::troubled, this, &PhotoBar::troubled);
    connect(m_model, &PhotoModel::modelReset, this, &PhotoBar::tell);
    connect(m_model, &PhotoModel::dataChanged, this, &PhotoBar::written);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, &PhotoBar::tell);
    tell();
}

void PhotoBar::show(std::optional<PieceId> piece, const QString& name) {
    m_name = name;
    m_model->show(piece);
    tell();
}

void PhotoBar::tell() {
    const int count = m_model->rowCount();
    const bool some = m_list->currentIndex().isValid();
    m_add->setEnabled(m_model->piece().has_value());
    m_measure->setEnabled(some);
    m_takeAway->setEnabled(some);
    m_list->setVisible(count > 0);
    m_words->setText(!m_model->piece() ? tr("Photos belong to a piece: go to its line.")
                     : count == 0      ? tr("No photo of %1 yet. Add some, or drop files here.").arg(m_name)
                                       : tr("Photos of %1").arg(m_name));
}

void PhotoBar::addFiles(const QStringList& files) {
    QStringList refused;
    const auto gather =
        connect(m_model, &PhotoModel::troubled, this, [&](const QString& why) { refused << why; });
    bool some = false;
    for (const QString& file : files) {
        const auto id = m_model->take(file);
        if (!id)
            continue;
        some = true;
        for (int row = 0; row < m_model->rowCount(); ++row)
            if (m_model->photo(row).id == *id)
                m_undo.push(
                    new PhotoChange(*m_model, m_model->photo(row), {}, true, tr("photo of %1").arg(m_name)));
    }
    disconnect(gather);
    if (some) {
        m_list->setCurrentIndex(m_model->index(m_model->rowCount() - 1));
        Q_EMIT written();
    }
    if (!refused.isEmpty())
        Q_EMIT troubled(refused.join(QLatin1Char('\n')));
}

void PhotoBar::takeAway() {
    const int row = m_list->currentIndex().row();
    if (row < 0)
        return;
    Photo whole = m_model->photo(row);
    m_undo.push(new PhotoChange(*m_model, std::move(whole), m_model->measures(row), false,
                                tr("photo of %1 taken away").arg(m_name)));
    Q_EMIT written();
}

MeasureWindow* PhotoBar::measure() {
    const int row = m_list->currentIndex().row();
    if (row < 0)
        return nullptr;
    auto* window = new MeasureWindow(m_theme, m_name, m_model->picture(row), this);
    window->setAttribute(Qt::WA_DeleteOnClose);
    connect(window, &MeasureWindow::measured, this,
            [this, window, on = m_model->photo(row).id](const PhotoLength& length) {
                if (!m_model->addMeasure(on, window->what(), length, window->knownLength_mm(),
                                         window->view().marks()))
                    return;
                Q_EMIT measured(length, window->ring());
                Q_EMIT written();
            });
    window->open();
    return window;
}

void PhotoBar::dragEnterEvent(QDragEnterEvent* event) {
    if (m_model->piece() && !localFiles(*event->mimeData()).isEmpty())
        event->acceptProposedAction();
}

void PhotoBar::dropEvent(QDropEvent* event) {
    addFiles(localFiles(*event->mimeData()));
    event->acceptProposedAction();
}

} // namespace ringhold
