// The right page of the spread: the curve over its plan, a close-up, the cones, the card beside them,
// advice, and the crystal once it grows.
#pragma once

#include <QFrame>
#include <QTimer>

#include <vector>

namespace ringhold {

class AdvicePanel;
class CrystalCard;
class CrystalPanel;
class CurveView;
class FiringSession;
class HeatCard;
class LiveCrystalModel;
struct GrowthRate;
class PackView;
class Preferences;
class SupplyLine;
class Theme;

/// Session, preferences and theme outlive it.
class RightPage : public QFrame {
    Q_OBJECT

  public:
    RightPage(FiringSession& session, const Preferences& preferences, const Theme& theme,
              QWidget* parent = nullptr);

    /// How the firing's crystals grow, once it is known.
    void setGrowthRate(const GrowthRate& rate);
    /// Cones as last seen and as they are thought to stand.
    void refreshPacks();

  Q_SIGNALS:
    /// Something could not be kept: said in words.
    void troubled(const QString& what);
    /// A meter's stand is to be written.
    void meterWanted();

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    QLayout* makeCards();
    void refreshCurves();
    void unfoldAdvice(bool unfolded);
    void unfoldGrowth(bool unfolded);
    void placeCards();

    FiringSession& m_session;
    const Theme& m_theme;
    CurveView* m_whole;
    CurveView* m_closeUp;
    SupplyLine* m_supply;
    AdvicePanel* m_advice;
    HeatCard* m_heat;
    LiveCrystalModel* m_crystal;
    CrystalPanel* m_growth;
    CrystalCard* m_crystalCard;
    std::vector<PackView*> m_packs;
    std::vector<QWidget*> m_packCards;
    QTimer m_repaint;
};

} // namespace ringhold
