// The makers of the verbs, one a file.
#pragma once

#include "app/verbs/verb.h"

namespace ringhold {

std::unique_ptr<Verb> makePracticeVerb();
std::unique_ptr<Verb> makeDemoVerb();
std::unique_ptr<Verb> makeHeatworkVerb();
std::unique_ptr<Verb> makeHoldsVerb();
std::unique_ptr<Verb> makeRingsVerb();
std::unique_ptr<Verb> makeEmfVerb();
std::unique_ptr<Verb> makeBringVerb();
std::unique_ptr<Verb> makeLogVerb();
std::unique_ptr<Verb> makeListVerb();
std::unique_ptr<Verb> makeReportVerb();
std::unique_ptr<Verb> makePicturesVerb();
std::unique_ptr<Verb> makeExportVerb();
std::unique_ptr<Verb> makeCheckVerb();
std::unique_ptr<Verb> makeCopyVerb();

} // namespace ringhold
