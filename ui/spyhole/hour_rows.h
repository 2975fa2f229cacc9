// A row of hours for every cone of a pack.
#pragma once

#include <QStringList>
#include <QWidget>

#include <optional>
#include <vector>

class QGridLayout;

namespace ringhold {

class ChoiceRow;
class Theme;

/// Thirteen hours a row: standing, just leaning, 1, 1½ ... 5½, down. Up and down go to the next cone.
class HourRows : public QWidget {
    Q_OBJECT

  public:
    explicit HourRows(const Theme& theme, QWidget* parent = nullptr);

    /// `notes`, one a cone, tell more of each to whoever points at it or hears it.
    void setCones(const QStringList& cones, const QStringList& notes = {});
    void setHour(std::size_t cone, std::optional<double> hour);
    ChoiceRow* row(std::size_t cone) const { return m_rows[cone]; }
    std::size_t count() const { return m_rows.size(); }
    /// Puts the keys on that cone's row.
    void focusOn(std::size_t cone);

  Q_SIGNALS:
    /// By the potter; nothing when taken back.
    void chosen(std::size_t cone, std::optional<double> hour);

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    const Theme& m_theme;
    QGridLayout* m_grid;
    std::vector<ChoiceRow*> m_rows;
};

} // namespace ringhold
