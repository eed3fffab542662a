// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over where a garment's decals lie on it.

#include "core/holds/rules.h"
#include "core/orders/decal_on_cloth.h"

namespace holdfast {

// A caution: the drawn widths are middling ones, and the blank in the maker's hand may be wider.
void decalOffCloth(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        const Sentence off = offClothWords(subject.style, subject.garment.size, spotOf(decal));
        if (off.empty())
            continue;
        Finding finding;
        finding.rule = Rule::DecalOffCloth;
        finding.grade = Grade::Caution;
        finding.what = said("Decal off the cloth");
        finding.why = said("{decal} is {size} on the {placement}. {off}",
                           {{"decal", decal.describe()},
                            {"size", Extent{decal.width, decal.height}},
                            {"placement", placementName(decal.placement)},
                            {"off", off}});
        finding.decal = decal.id;
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
