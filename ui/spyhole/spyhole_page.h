// The spyhole of a live firing: its packs, its forecast, its clock.
#pragma once

#include "core/base/result.h"
#include "ui/spyhole/spyhole_model.h"

#include <QWidget>

namespace ringhold {

class FiringSession;
class Preferences;
class SpyholePanel;
class Theme;

/// Session, preferences and theme outlive it. What was entered stays while another page is looked at.
class SpyholePage : public QWidget {
    Q_OBJECT

  public:
    SpyholePage(FiringSession& session, const Preferences& preferences, const Theme& theme,
                QWidget* parent = nullptr);

    const FiringSession& session() const { return m_session; }
    SpyholeModel& model() { return m_model; }
    /// Takes the keyboard.
    void begin();

  Q_SIGNALS:
    /// The looks are written, or left.
    void finished();

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    SpyholeModel::Outside outside();
    Result<LookPreview> preview(const std::vector<Look>& looks) const;
    void takeFiring();

    FiringSession& m_session;
    const Preferences& m_preferences;
    SpyholeModel m_model;
    SpyholePanel* m_panel;
};

} // namespace ringhold
