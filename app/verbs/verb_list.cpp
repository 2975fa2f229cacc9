#include "app/verbs/verb_list.h"

namespace ringhold {

std::vector<std::unique_ptr<Verb>> allVerbs() {
    std::vector<std::unique_ptr<Verb>> verbs;
    for (auto make : {makePracticeVerb, makeDemoVerb, makeHeatworkVerb, makeHoldsVerb, makeRingsVerb,
                      makeEmfVerb, makeBringVerb, makeLogVerb, makeListVerb, makeReportVerb, makePicturesVerb,
                      makeExportVerb, makeCheckVerb, makeCopyVerb})
        verbs.push_back(make());
    return verbs;
}

} // namespace ringhold
