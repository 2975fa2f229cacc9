#include "app/window/practice_start.h"

#include "app/window/practice_hand.h"
#include "core/kiln/practice_firing.h"
#include "ui/session/notebook.h"

namespace ringhold {

namespace {

/// The practice kiln of that seed as the book knows it, made if need be.
Result<Kiln> practiceKiln(Notebook& notebook, std::uint64_t seed, const PracticeSettings& secrets) {
    const std::string name = "Practice kiln " + std::to_string(seed);
    const auto known = notebook.reader().kilnNamed(name);
    if (!known)
        return known.error();
    if (*known)
        return **known;
    Kiln kiln;
    kiln.name = name;
    kiln.ratedPower = secrets.kiln.fullPower;
    kiln.ratedVolts = secrets.kiln.ratedVolts;
    const auto id = notebook.writer().add(kiln);
    if (!id)
        return id.error();
    kiln.id = *id;
    return kiln;
}

Result<ProbeId> practiceProbe(Notebook& notebook, KilnId kiln) {
    const auto probes = notebook.reader().probes(kiln);
    if (!probes)
        return probes.error();
    if (!probes->empty())
        return probes->front().id;
    Probe probe;
    probe.kiln = kiln;
    probe.label = "control";
    probe.fitted = notebook.clock().now();
    return notebook.writer().add(probe);
}

} // namespace

Result<PracticeStarted> beginPractice(Notebook& notebook, const WindowPractice& practice) {
    const auto secrets = drawnPracticeSettings(practicePlan(), practice.seed);
    const auto kiln = practiceKiln(notebook, practice.seed, secrets);
    if (!kiln)
        return kiln.error();
    const auto probe = practiceProbe(notebook, kiln->id);
    if (!probe)
        return probe.error();
    if (const auto open = notebook.reader().openFiring(kiln->id); open && *open)
        if (const auto ended = notebook.writer().end((*open)->id, notebook.clock().now()); !ended)
            return ended.error(); // broken off with the window; a practice kiln cannot go on where it was
    NewFiring firing;
    firing.kiln = kiln->id;
    firing.probe = *probe;
    firing.plan = practicePlan();
    firing.title = QStringLiteral("practice");
    Pack pack;
    pack.place = "middle shelf";
    pack.cones = {"8", "9", "10"};
    firing.packs.push_back(pack);
    auto instrument = std::make_unique<PracticeInstrument>(secrets, practice.speed);
    auto& kilnSide = *instrument;
    const auto session = notebook.beginWith(firing, std::move(instrument));
    if (!session)
        return session.error();
    if (auto habits = habitsFor(practicePlan()))
        new PracticeHand(**session, kilnSide, *habits, practice.seed, *session);
    return PracticeStarted{*session, &kilnSide};
}

} // namespace ringhold
