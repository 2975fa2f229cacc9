#include "app/demo/demo_book.h"

#include "app/demo/demo_photo.h"
#include "app/demo/demo_run.h"
#include "core/book/glaze_cards.h"
#include "core/book/kept_plans.h"
#include "core/book/kiln_care.h"
#include "core/book/reader.h"
#include "core/book/transaction.h"
#include "core/book/ware_finds.h"
#include "core/book/writer.h"
#include "core/growth/crystal.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr std::size_t photosOfAFiring = 2;
constexpr std::size_t plansKept = 5;

/// Writes page after page of the studio's book.
class DemoScribe {
  public:
    DemoScribe(const Book& book, DemoStudio studio, std::uint64_t seed)
        : m_book(book), m_writer(book), m_studio(std::move(studio)), m_seed(seed) {}

    Status write(const DemoProgress& progress) {
        for (const auto part : {&DemoScribe::writeKilns, &DemoScribe::writeCards, &DemoScribe::writeCare})
            if (const Status done = (this->*part)(); !done)
                return done;
        for (std::size_t i = 0; i < m_studio.firings.size(); ++i) {
            if (const Status fired = fire(i); !fired)
                return fired;
            if (progress)
                progress(m_studio.firings[i].title, m_studio.firings.size() - i - 1);
        }
        return m_writer.setPreference("zone", demoZone);
    }

  private:
    Status writeKilns() {
        for (auto& kiln : m_studio.kilns) {
            const auto id = m_writer.add(kiln.kiln);
            if (!id)
                return id.error();
            kiln.kiln.id = *id;
            for (auto& [probe, offset] : kiln.probes) {
                probe.kiln = *id;
                const auto added = m_writer.add(probe);
                if (!added)
                    return added.error();
                probe.id = *added;
            }
        }
        return {};
    }

    Status writeCards() {
        for (const auto& glaze : m_studio.glazes)
            if (const auto added = GlazeCards(m_book).add(glaze.card); !added)
                return added.error();
        std::vector<Plan> plans;
        for (const auto& firing : m_studio.firings)
            if (plans.size() < plansKept && std::ranges::count(plans, firing.plan.name, &Plan::name) == 0)
                plans.push_back(firing.plan);
        return keepPlans(m_writer, plans);
    }

    Status writeCare() {
        KilnCare care(m_book);
        for (const auto& service : m_studio.services) {
            ServiceEntry entry = service.entry;
            const auto& kiln = m_studio.kilns[service.kiln];
            entry.kiln = kiln.kiln.id;
            if (service.probe)
                entry.probe = kiln.probes[*service.probe].probe.id;
            if (const auto added = care.add(entry); !added)
                return added.error();
        }
        std::vector<ChecklistItem> items;
        for (const auto& words : m_studio.checklist)
            items.push_back({{}, 0, words, ChecklistKind::own});
        return care.setChecklist(items);
    }

    Status fire(std::size_t index) {
        const DemoFiring& firing = m_studio.firings[index];
        const std::uint64_t seed = m_seed * 100 + index;
        auto run = DemoRun::begin(m_book, m_studio, firing, seed);
        if (!run)
            return run.error();
        Chance chance(seed, 5);
        auto load = demoLoad(m_studio, firing, chance);
        for (auto& [piece, glaze, shelf] : load) {
            piece.firing = (*run)->id();
            const auto added = m_writer.add(piece);
            if (!added)
                return added.error();
            piece.id = *added;
        }
        if (const Status fired = (*run)->fire(); !fired)
            return fired;
        return unload(firing, load, **run, chance);
    }

    Status unload(const DemoFiring& firing, const std::vector<DemoPiece>& load, const DemoRun& run,
                  Chance& chance) {
        const DemoCourse course = run.course();
        std::vector<std::pair<const DemoPiece*, Outcome>> found;
        for (const auto& piece : load) {
            const auto made = demoOutcome(piece, m_studio, firing, course, chance);
            if (const Status kept = m_writer.set(made.outcome); !kept)
                return kept;
            for (const auto& ring : made.rings)
                if (const Status kept = WareFinds(m_book).set(ring); !kept)
                    return kept;
            found.emplace_back(&piece, made.outcome);
            if (const Status answered = answerSags(firing, piece, course, chance); !answered)
                return answered;
        }
        std::ranges::stable_sort(found, [](const auto& a, const auto& b) {
            return a.second.largest_mm.value_or(0) > b.second.largest_mm.value_or(0);
        });
        found.resize(std::min(found.size(), photosOfAFiring));
        for (const auto& [piece, outcome] : found)
            if (const Status kept = photograph(piece->piece, outcome, run.ended()); !kept)
                return kept;
        return {};
    }

    /// Was the sag of the growth hold to be seen?
    Status answerSags(const DemoFiring& firing, const DemoPiece& piece, const DemoCourse& course,
                      Chance& chance) {
        const auto* hold = std::get_if<Hold>(&firing.plan.steps[3]);
        for (const auto& fault : firing.faults) {
            if (fault.kind != FaultKind::sag || !hold)
                continue;
            const Instant at = firing.lit + fault.from + fault.length.value_or(Duration{0});
            const double depth_C = temperatureAt(course.felt, at - std::chrono::minutes(60)).celsius() -
                                   temperatureAt(course.felt, at).celsius();
            if (depth_C < 1)
                continue;
            const auto& glaze = m_studio.glazes[piece.glaze];
            const CrystalGrowth growth(course.felt, glaze.growth);
            const SagSeen answer{piece.piece.id, at, demoSight(depth_C, glaze, chance),
                                 growth.radiusAt(at).likely_mm};
            if (const Status kept = WareFinds(m_book).set(answer); !kept)
                return kept;
        }
        return {};
    }

    Status photograph(const Piece& piece, const Outcome& outcome, Instant fired) {
        if (!outcome.largest_mm)
            return {};
        const auto picture = drawDemoPiece(piece, outcome, m_seed + static_cast<std::uint64_t>(piece.id));
        auto photo = demoPhoto(picture, piece.name + ", drawn for the demo", fired + std::chrono::hours(20));
        if (!photo)
            return photo.error();
        photo->piece = piece.id;
        WareFinds finds(m_book);
        const auto added = finds.add(*photo);
        if (!added)
            return added.error();
        const PhotoMeasure measure{{}, *added, "largest crystal", 50, *outcome.largest_mm, 0.4, picture.ends};
        const auto measured = finds.add(measure);
        return measured ? Status() : Status(measured.error());
    }

    const Book& m_book;
    BookWriter m_writer;
    DemoStudio m_studio;
    std::uint64_t m_seed;
};

} // namespace

Status writeDemoBook(const Book& book, DemoStudio studio, std::uint64_t seed, const DemoProgress& progress) {
    const auto firings = BookReader(book).firings();
    if (!firings)
        return firings.error();
    if (!firings->empty())
        return Error{ErrorKind::badInput, "the demo wants a new book, and this one has firings",
                     book.file().string()};
    auto transaction = WriteTransaction::begin(book);
    if (!transaction)
        return transaction.error();
    if (const Status written = DemoScribe(book, std::move(studio), seed).write(progress); !written)
        return written;
    return transaction->commit();
}

} // namespace ringhold
