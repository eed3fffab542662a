// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over what was agreed with the customer, and over what the law may ask.

#include "core/holds/rules.h"
#include "core/orders/price.h"
#include "core/trade/unit_words.h"

namespace holdfast {

void wordingUnconfirmed(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        if (decal.isConfirmed())
            continue;
        Finding finding;
        finding.rule = Rule::WordingUnconfirmed;
        finding.what = std::holds_alternative<Wording>(decal.content) ? "Wording not confirmed"
                                                                      : "Artwork not confirmed";
        finding.why = decal.describe() + ", " + placementName(decal.placement) + ", " +
                      sizeWords(decal.width, decal.height) + ": the customer has not agreed to it yet.";
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
    finding.what = "Deposit short";
    finding.why = spokenAmount(order.paid, settings.currency) + " of " +
                  spokenAmount(order.total, settings.currency) + " paid; the shop asks " +
                  std::to_string(settings.depositPercent) + " % first, " +
                  spokenAmount(asked, settings.currency) + ".";
    finding.frees = {FreeingAct::TakePayment};
    findings.push_back(std::move(finding));
}

void localLaw(const Subject& subject, Findings& findings) {
    const BlankStyle& style = subject.style;
    if (!style.lawCheckedBy.empty())
        return;
    std::string kinds;
    const auto name = [&](bool applies, std::string_view kind) {
        if (applies)
            kinds += (kinds.empty() ? "" : ", ") + std::string(kind);
    };
    name(style.forChild, "for a child");
    name(style.sleepwear, "sleepwear");
    name(style.hasCords, "has cords");
    if (kinds.empty())
        return;
    Finding finding;
    finding.rule = Rule::LocalLaw;
    finding.grade = Grade::Caution;
    finding.what = "Check local law";
    finding.why = "A rule may apply: check local law. " + style.name + ": " + kinds + ".";
    finding.frees = {FreeingAct::NoteLawChecked};
    finding.style = style.id;
    findings.push_back(std::move(finding));
}

} // namespace holdfast
