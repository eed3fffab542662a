// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the blank: is there one, is it washed, dry and clean, is its label read, what is in the way.

#include "core/holds/rules.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

Finding onLot(Rule rule, Grade grade, const Subject& subject) {
    Finding finding;
    finding.rule = rule;
    finding.grade = grade;
    finding.style = subject.style.id;
    if (subject.lot)
        finding.lot = subject.lot->id;
    return finding;
}

Value colourName(const BlankStyle& style, ColourId colour) {
    const Colour* found = style.colour(colour);
    return found ? Value{found->name} : Value{said("unknown colour")};
}

Sentence lotWords(const Subject& subject) {
    const BlankLot& lot = *subject.lot;
    return said("Lot of {day}, {size}, {colour}", {{"day", DateWithYear{lot.receivedOn}},
                                                   {"size", lot.size},
                                                   {"colour", colourName(subject.style, lot.colour)}});
}

Sentence wantedWords(const Subject& subject) {
    const Garment& garment = subject.garment;
    return said("{style}, {size}, {colour}", {{"style", subject.style.name},
                                              {"size", garment.size},
                                              {"colour", colourName(subject.style, garment.colour)}});
}

std::int64_t freeUnitsFor(const Subject& subject) {
    std::int64_t units = 0;
    for (const BlankLot& lot : subject.facts().lots)
        if (lot.style == subject.garment.style && lot.size == subject.garment.size &&
            lot.colour == subject.garment.colour)
            units += subject.facts().freeUnits(lot);
    return units;
}

const WashLoad* loadOf(const Subject& subject) {
    return subject.lot ? subject.facts().lastLoadOf(*subject.lot) : nullptr;
}

} // namespace

void blankOutOfStock(const Subject& subject, Findings& findings) {
    if (subject.lot)
        return;
    Finding finding = onLot(Rule::BlankOutOfStock, Grade::Hold, subject);
    const std::int64_t units = freeUnitsFor(subject);
    if (units > 0) {
        finding.what = said("No blank reserved");
        finding.why = said("{blank}: {n} left on the rail, none reserved for this garment.",
                           {{"blank", wantedWords(subject)}, {"n", units}});
        finding.frees = {FreeingAct::ChooseBlank, FreeingAct::ReceiveBlanks};
    } else {
        finding.what = said("Blank out of stock");
        finding.why = said("{blank}: 0 left on the rail.", {{"blank", wantedWords(subject)}});
        finding.frees = {FreeingAct::ReceiveBlanks, FreeingAct::ChooseBlank};
    }
    findings.push_back(std::move(finding));
}

void blankUnwashed(const Subject& subject, Findings& findings) {
    if (!subject.lot || loadOf(subject) || !subject.style.washedFirst())
        return;
    Finding finding = onLot(Rule::BlankUnwashed, Grade::Hold, subject);
    finding.what = said("Unwashed");
    finding.why = said("{lot}: no wash load on record.", {{"lot", lotWords(subject)}});
    finding.frees = {FreeingAct::WashBlank, FreeingAct::ChooseBlank, FreeingAct::MarkNotPrewashed};
    findings.push_back(std::move(finding));
}

void blankDamp(const Subject& subject, Findings& findings) {
    const WashLoad* load = loadOf(subject);
    if (!load || load->isDry())
        return;
    const ShopSettings& settings = subject.facts().settings;
    const LocalTime washed = subject.around.now.toLocal(load->startedAt);
    const LocalTime dry =
        subject.around.now.toLocal(load->startedAt + settings.washTakes + settings.dryingTakes);
    Finding finding = onLot(Rule::BlankDamp, Grade::Hold, subject);
    finding.what = said("Not yet dry");
    finding.why = said("{lot}: washed {washed}, should be dry from {dry}; not marked dry yet.",
                       {{"lot", lotWords(subject)}, {"washed", washed}, {"dry", dry}});
    finding.frees = {FreeingAct::MarkDry, FreeingAct::ChooseBlank};
    findings.push_back(std::move(finding));
}

void softenerLeft(const Subject& subject, Findings& findings) {
    const WashLoad* load = loadOf(subject);
    if (!load || !load->leftSoftener())
        return;
    const std::vector<NamedValue> values{{"lot", lotWords(subject)},
                                         {"washed", dateOf(subject.around.now.toLocal(load->startedAt))}};
    Finding finding = onLot(Rule::SoftenerLeft, Grade::Hold, subject);
    finding.what = load->softener ? said("Washed with softener") : said("Dried with dryer sheet");
    finding.why =
        load->softener
            ? said("{lot}: the load of {washed} had softener in it, which adhesive does not grip.", values)
            : said("{lot}: the load of {washed} was dried with a dryer sheet, which adhesive does not grip.",
                   values);
    finding.frees = {FreeingAct::WashBlank, FreeingAct::ChooseBlank};
    findings.push_back(std::move(finding));
}

void blankShrank(const Subject& subject, Findings& findings) {
    if (!subject.lot || !subject.lot->shrinkage)
        return;
    const Shrinkage& measured = *subject.lot->shrinkage;
    if (measured.lengthBefore.value <= 0 || measured.widthBefore.value <= 0)
        return;
    const double length = dimensionalChange(measured.lengthBefore, measured.lengthAfter);
    const double width = dimensionalChange(measured.widthBefore, measured.widthAfter);
    const double limit = subject.facts().settings.shrinkLimitPercent;
    if (std::min(length, width) >= -limit)
        return;
    const auto changed = [](double percent) {
        const std::vector<NamedValue> values{{"percent", Decimal{std::abs(percent)}}};
        return percent <= 0 ? said("{percent} % shorter", values) : said("{percent} % longer", values);
    };
    Finding finding = onLot(Rule::BlankShrank, Grade::Caution, subject);
    finding.what = said("Blank shrank");
    finding.why = said("{lot}: after its wash length {length}, width {width}; the shop's limit is {limit} %.",
                       {{"lot", lotWords(subject)},
                        {"length", changed(length)},
                        {"width", changed(width)},
                        {"limit", Decimal{limit}}});
    finding.frees = {FreeingAct::ChooseBlank};
    findings.push_back(std::move(finding));
}

std::optional<Finding> unreadLabel(const BlankStyle& style) {
    if (style.label && !style.label->fibres.empty())
        return std::nullopt;
    Finding finding;
    finding.rule = Rule::LabelUnread;
    finding.what = said("Label not read");
    finding.why = said("{style}: fibres and highest safe heat are unknown until its sewn-in label is read.",
                       {{"style", style.name}});
    finding.frees = {FreeingAct::ReadLabel};
    finding.style = style.id;
    return finding;
}

void labelUnread(const Subject& subject, Findings& findings) {
    if (auto finding = unreadLabel(subject.style))
        findings.push_back(std::move(*finding));
}

namespace {

Finding obstacleUnsolved(const Subject& subject, const ObstacleOnStyle& obstacle) {
    Finding finding = onLot(Rule::ObstacleUnsolved, Grade::Hold, subject);
    finding.what = said("{obstacle} in the way", {{"obstacle", obstacleName(obstacle.obstacle)}});
    finding.why = said("{style}: {obstacle} under the platen, and no way round is chosen.",
                       {{"style", subject.style.name}, {"obstacle", obstacleName(obstacle.obstacle)}});
    finding.frees = {FreeingAct::ChooseWayRound};
    return finding;
}

Finding smallPlatenMissing(const Subject& subject, const ObstacleOnStyle& obstacle) {
    Finding finding = onLot(Rule::ObstacleUnsolved, Grade::Hold, subject);
    finding.what = said("No small platen");
    finding.why = said("{style}: to be pressed on a small platen, clear of the {obstacle}; {press} has none.",
                       {{"style", subject.style.name},
                        {"obstacle", obstacleName(obstacle.obstacle)},
                        {"press", subject.press->name}});
    finding.frees = {FreeingAct::ChooseWayRound, FreeingAct::AddPress};
    finding.press = subject.press->id;
    return finding;
}

Finding obstacleSolved(const Subject& subject, const ObstacleOnStyle& obstacle, WayRound way) {
    Finding finding = onLot(Rule::ObstacleSolved, Grade::StepAdded, subject);
    finding.what = wayRoundTitle(obstacle.obstacle, way);
    finding.why = said("{style}: {obstacle} under the platen; one step is added.",
                       {{"style", subject.style.name}, {"obstacle", obstacleName(obstacle.obstacle)}});
    finding.frees = {FreeingAct::ChooseWayRound};
    return finding;
}

} // namespace

void obstacles(const Subject& subject, Findings& findings) {
    for (const ObstacleOnStyle& obstacle : subject.style.obstacles) {
        if (!obstacle.way)
            findings.push_back(obstacleUnsolved(subject, obstacle));
        else if (*obstacle.way == WayRound::SmallPlaten && subject.press && !subject.press->hasSmallPlaten)
            findings.push_back(smallPlatenMissing(subject, obstacle));
        else
            findings.push_back(obstacleSolved(subject, obstacle, *obstacle.way));
    }
}

} // namespace holdfast
