// The pages of a book that a practice firing is written on.
#pragma once

#include "core/book/book.h"
#include "core/cones/offset_prior.h"
#include "core/firing/records.h"
#include "core/kiln/practice_potter.h"
#include "core/units/curve.h"

#include <cstdint>
#include <vector>

namespace ringhold {

/// Each seed is a kiln of its own, with its own secrets, so that its firings may teach the next one. Same
/// thread as the book, which must outlive this.
class PracticeNotebook {
  public:
    /// A new firing that begins then. One left open, by a run that was broken off, is ended where it stopped.
    static Result<PracticeNotebook> begin(const Book& book, std::uint64_t seed, const Plan& plan, Instant at);

    const Kiln& kiln() const { return m_kiln; }
    const Firing& firing() const { return m_firing; }
    const Pack& pack() const { return m_pack; }
    /// What the book knows of this probe's offset at the pack, before anyone looks.
    Result<OffsetPrior> prior() const;

    Status write(const std::vector<PracticeLook>& looks, bool cold);
    Status file(TemperatureDifference mean, TemperatureDifference sd, Instant at);
    Status end(Instant at);
    /// What the control probe read, out of the book again.
    Result<Curve> curve() const;

  private:
    explicit PracticeNotebook(const Book& book) : m_book(&book) {}
    Status findKiln(std::uint64_t seed);
    Status findProbe();
    Status beginFiring(const Plan& plan, Instant at);

    const Book* m_book;
    Kiln m_kiln;
    Probe m_probe;
    Firing m_firing;
    Pack m_pack;
};

} // namespace ringhold
