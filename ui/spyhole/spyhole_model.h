// What the potter sees through the spyhole, before it is written: hours by cone, when, and what they would do
// to the forecast. No widgets.
#pragma once

#include "core/base/result.h"
#include "core/cones/forecast.h"
#include "core/firing/records.h"
#include "core/report/words.h"
#include "ui/cones/pack_drawing.h"
#include "ui/spyhole/look_effect.h"

#include <QObject>
#include <QString>

#include <functional>
#include <map>
#include <optional>
#include <variant>
#include <vector>

namespace ringhold {

/// When the looks were taken.
struct MinutesAgo {
    int minutes = 0;
};
struct ClockTime {
    QString text; ///< "18:03", in the zone shown
};
using LookTime = std::variant<MinutesAgo, ClockTime>;

/// Lives in the window's thread. Hours are 0 standing to 6 down, in halves; cones are counted in their pack.
class SpyholeModel : public QObject {
    Q_OBJECT

  public:
    /// What it asks of the outside.
    struct Outside {
        /// Unwritten looks, which come after the firing's own in the order of Forecast's wrongLook. None asks
        /// for the forecast as it is, twice. An Error says in words why there is no forecast.
        std::function<Result<LookPreview>(const std::vector<Look>&)> preview;
        std::function<Instant()> now; ///< at this kiln
        /// A look without id; it is in the notebook when that gives no Error.
        std::function<Status(const Look&)> write;
        std::function<WordStyle()> style; ///< its zone is that in which times are shown and typed
    };

    explicit SpyholeModel(Outside outside, QObject* parent = nullptr);

    /// The firing's packs and looks so far. What is entered for a pack or cone that is gone is dropped.
    /// `firingCone` is the cone that the plan waits for; the middle one of a pack that has no such cone.
    void setFiring(std::vector<Pack> packs, const std::vector<Look>& looks,
                   std::optional<std::string> firingCone = {});
    /// Reckons the forecasts again: time has passed, or readings have come.
    void refresh();

    const std::vector<Pack>& packs() const { return m_packs; }
    std::size_t currentPack() const { return m_current; }
    void setCurrentPack(std::size_t pack);
    /// How well the model fits each cone of the current pack, in words.
    QStringList fitNotes() const;

    /// The hour entered for a cone of the current pack, typed or chosen; nothing when not looked at.
    std::optional<double> entered(std::size_t cone) const;
    void enter(std::size_t cone, std::optional<double> hour);
    /// The typing line, as it is now: "10 3.5", "9 4, 10 just leaning, 5 min ago". Its cones and its time,
    /// when it has one, count instead of what was chosen.
    void setTyped(const QString& text);
    const QString& typed() const { return m_typed; }
    /// What is not understood of it; empty when all is.
    QString typedTrouble() const { return m_typedTrouble; }

    void setTime(const LookTime& time);
    const LookTime& time() const { return m_time; }
    /// Whether the typing line says when.
    bool timeIsTyped() const { return m_typedAt.has_value(); }
    /// Nothing when the clock time is none.
    std::optional<Instant> at() const;
    /// "18:03"; empty when the clock time is none.
    QString atWords() const;

    /// The pack as drawn: solid as entered or else as last seen, dashed as the model thinks.
    DrawnPack drawing() const;
    /// What the looks entered would do: see effectWords(). Without any, when the firing cone will be down.
    QString previewWords() const { return m_previewWords; }
    /// What speaks against the looks entered; they may be written all the same.
    QStringList doubts() const { return m_doubts; }

    /// The looks entered, over all packs.
    std::vector<Look> looks() const;
    bool canWrite() const;
    /// Hands the looks over to be written, one by one, and clears what was entered; from the first that fails
    /// on, they are kept. badInput unless canWrite().
    Status write();
    /// Forgets what was entered.
    void clear();

  Q_SIGNALS:
    void packsChanged(); ///< other packs, or another is current
    void changed();      ///< anything entered, or what is told about it
    void written();      ///< what was entered is in the notebook

  private:
    struct ConeKey {
        PackId pack{};
        std::string cone;
        auto operator<=>(const ConeKey&) const = default;
    };
    using Hours = std::map<ConeKey, double>;

    void understandTyped();
    const Pack* packWith(const std::string& cone) const;
    const Pack* packOf(PackId id) const;
    std::optional<ConeKey> keyOf(std::size_t cone) const;
    Hours allEntered() const;
    std::optional<double> lastSeen(const ConeKey& key) const;
    std::optional<GhostCone> ghostOf(std::size_t cone) const;
    void takeTypedAsChosen();
    void update();
    void tellEffect(const std::vector<Look>& looks);

    Outside m_outside;
    std::vector<Pack> m_packs;
    std::vector<Look> m_looks; ///< those that count
    std::optional<std::string> m_firingCone;
    std::size_t m_current = 0;
    Hours m_chosen;
    Hours m_typedHours;
    QString m_typed;
    QString m_typedTrouble;
    std::optional<Instant> m_typedAt;
    LookTime m_time = MinutesAgo{};
    std::optional<Forecast> m_forecast; ///< as it is
    QString m_previewWords;
    QStringList m_doubts;
};

} // namespace ringhold
