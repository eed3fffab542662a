// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over what was agreed with the customer, and over what the law may ask.

#include "core/holds/rules.h"
#include "core/orders/price.h"

namespace holdfast {

void wordingUnconfirmed(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        if (decal.isConfirmed())
            continue;
        Finding finding;
        finding.rule = Rule::WordingUnconfirmed;
        finding.what = std::holds_alternative<Wording>(decal.content) ? said("Wording not confirmed")
                                                                      : said("Artwork not confirmed");
        finding.why = said("{decal}, {placement}, {size}: the customer has not agreed to it yet.",
                           {{"decal", decal.describe()},
                            {"placement", placementName(decal.placement)},
                            {"size", Extent{decal.width, decal.height}}});
        finding.frees = {FreeingAct::ConfirmWording};
        finding.decal = decal.id;
        finding.film = decal.film;
        findings.push_back(std::move(finding));
    }
}

void depositShort(const Subject& subject, Findings& findings) {
    const ShopSettings& settings = subject.facts().settings;
    const Order& order = subject.order;
    if (settings.depositPercent <= 0)
        return;
    const Money asked = depositDue(order.total, settings); // as the table and the slip ask for it
    if (order.paid >= asked)
        return;
    Finding finding;
    finding.rule = Rule::DepositShort;
    finding.grade = settings.depositHolds ? Grade::Hold : Grade::Caution;
    finding.what = said("Deposit short");
    finding.why = said("{paid} of {total} paid; the shop asks {percent} % first, {asked}.",
                       {{"paid", Amount{order.paid, settings.currency}},
                        {"total", Amount{order.total, settings.currency}},
                        {"percent", settings.depositPercent},
                        {"asked", Amount{asked, settings.currency}}});
    finding.frees = {FreeingAct::TakePayment};
    findings.push_back(std::move(finding));
}

void localLaw(const Subject& subject, Findings& findings) {
    const BlankStyle& style = subject.style;
    if (!style.lawCheckedBy.empty())
        return;
    std::vector<Sentence> kinds;
    if (style.forChild)
        kinds.push_back(said("for a child"));
    if (style.sleepwear)
        kinds.push_back(said("sleepwear"));
    if (style.hasCords)
        kinds.push_back(said("has cords"));
    if (kinds.empty())
        return;
    Finding finding;
    finding.rule = Rule::LocalLaw;
    finding.grade = Grade::Caution;
    finding.what = said("Check local law");
    finding.why = said("A rule may apply: check local law. {style}: {kinds}.",
                       {{"style", style.name}, {"kinds", std::move(kinds)}});
    finding.frees = {FreeingAct::NoteLawChecked};
    finding.style = style.id;
    findings.push_back(std::move(finding));
}

} // namespace holdfast
