// Column heads that break between words where their column is narrow.
#pragma once

#include <QHeaderView>

namespace ringhold {

/// As high as its highest head.
class BreakingHeader : public QHeaderView {
    Q_OBJECT

  public:
    explicit BreakingHeader(QWidget* parent = nullptr);

  protected:
    void initStyleOptionForIndex(QStyleOptionHeader* option, int section) const override;
    QSize sectionSizeFromContents(int section) const override;

  private:
    QString broken(const QString& words, int section) const;
};

} // namespace ringhold
