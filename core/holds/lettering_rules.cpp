// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the letters of a garment's wordings.

#include "core/holds/rules.h"
#include "core/orders/lettering_strokes.h"

namespace holdfast {

// A caution: the strokes are an estimate, and a patient hand weeds finer than another. What is cut already
// was weeded as it is.
void letteringTooSmall(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        const auto* wording = std::get_if<Wording>(&decal.content);
        if (!wording || decal.isCut())
            continue;
        const double stroke = strokeEstimate(*wording, decal.height);
        if (stroke >= kThinnestStroke)
            continue;
        Finding finding;
        finding.rule = Rule::LetteringTooSmall;
        finding.grade = Grade::Caution;
        finding.what = said("Letters too small to weed");
        finding.why = said("{decal} is {height} high: strokes of about {stroke} mm, an estimate. Film tears "
                           "under {least} mm: make it larger.",
                           {{"decal", decal.describe()},
                            {"height", decal.height},
                            {"stroke", Decimal{stroke}},
                            {"least", Decimal{kThinnestStroke}}});
        finding.decal = decal.id;
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
