// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the blank: is there one, is it washed, dry and clean, is its label read, what is in the way.

#include "core/holds/rules.h"
#include "core/trade/unit_words.h"

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

std::string colourName(const BlankStyle& style, ColourId colour) {
    const Colour* found = style.colour(colour);
    return found ? found->name : "unknown colour";
}

// "Lot of 12 Oct 2026, M, Moss"
std::string lotWords(const Subject& subject) {
    const BlankLot& lot = *subject.lot;
    return "Lot of " + spokenDate(lot.receivedOn) + ", " + lot.size + ", " +
           colourName(subject.style, lot.colour);
}

// "Tee, M, Moss"
std::string wantedWords(const Subject& subject) {
    const Garment& garment = subject.garment;
    return subject.style.name + ", " + garment.size + ", " + colourName(subject.style, garment.colour);
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
        finding.what = "No blank kept";
        finding.why = wantedWords(subject) + ": " + std::to_string(units) +
                      " free on the rail, none kept for this garment.";
        finding.frees = {FreeingAct::ChooseBlank, FreeingAct::ReceiveBlanks};
    } else {
        finding.what = "Blank out of stock";
        finding.why = wantedWords(subject) + ": 0 free on the rail.";
        finding.frees = {FreeingAct::ReceiveBlanks, FreeingAct::ChooseBlank};
    }
    findings.push_back(std::move(finding));
}

void blankUnwashed(const Subject& subject, Findings& findings) {
    if (!subject.lot || loadOf(subject) || !subject.style.washedFirst())
        return;
    Finding finding = onLot(Rule::BlankUnwashed, Grade::Hold, subject);
    finding.what = "Unwashed";
    finding.why = lotWords(subject) + ": no wash load on record.";
    finding.frees = {FreeingAct::WashBlank, FreeingAct::ChooseBlank, FreeingAct::MarkNotPrewashed};
    findings.push_back(std::move(finding));
}

void blankDamp(const Subject& subject, Findings& findings) {
    const WashLoad* load = loadOf(subject);
    if (!load || load->isDry())
        return;
    const ShopSettings& settings = subject.facts().settings;
    const LocalTime washed = subject.around.now.toLocal(load->startedAt);
    const LocalTime dry = washed + settings.washTakes + settings.dryingTakes;
    Finding finding = onLot(Rule::BlankDamp, Grade::Hold, subject);
    finding.what = "Not yet dry";
    finding.why = lotWords(subject) + ": in the wash since " + spokenDay(dateOf(washed)) + ", " +
                  clockTime(washed) + "; dry from about " + spokenDay(dateOf(dry)) + ", " + clockTime(dry) +
                  ", nobody has found it dry yet.";
    finding.frees = {FreeingAct::MarkDry, FreeingAct::ChooseBlank};
    findings.push_back(std::move(finding));
}

void softenerLeft(const Subject& subject, Findings& findings) {
    const WashLoad* load = loadOf(subject);
    if (!load || !load->leftSoftener())
        return;
    const std::string washed = spokenDay(dateOf(subject.around.now.toLocal(load->startedAt)));
    Finding finding = onLot(Rule::SoftenerLeft, Grade::Hold, subject);
    finding.what = load->softener ? "Washed with softener" : "Dried with dryer sheet";
    finding.why = lotWords(subject) + ": the load of " + washed +
                  (load->softener ? " had softener in it" : " was dried with a dryer sheet") +
                  ", which adhesive does not grip.";
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
        return numberWords(std::abs(percent)) + (percent <= 0 ? " % shorter" : " % longer");
    };
    Finding finding = onLot(Rule::BlankShrank, Grade::Caution, subject);
    finding.what = "Blank shrank";
    finding.why = lotWords(subject) + ": after its wash length " + changed(length) + ", width " +
                  changed(width) + "; the shop's limit is " + numberWords(limit) + " %.";
    finding.frees = {FreeingAct::ChooseBlank};
    findings.push_back(std::move(finding));
}

std::optional<Finding> unreadLabel(const BlankStyle& style) {
    if (style.label && !style.label->fibres.empty())
        return std::nullopt;
    Finding finding;
    finding.rule = Rule::LabelUnread;
    finding.what = "Label not read";
    finding.why = style.name + ": fibres and highest safe heat are unknown until its sewn-in label is read.";
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
    finding.what = withCapital(obstacleName(obstacle.obstacle)) + " in the way";
    finding.why = subject.style.name + ": " + obstacleName(obstacle.obstacle) +
                  " under the platen, and no way round is chosen.";
    finding.frees = {FreeingAct::ChooseWayRound};
    return finding;
}

Finding smallPlatenMissing(const Subject& subject, const ObstacleOnStyle& obstacle) {
    Finding finding = onLot(Rule::ObstacleUnsolved, Grade::Hold, subject);
    finding.what = "No small platen";
    finding.why = subject.style.name + ": to be pressed on a small platen, clear of the " +
                  obstacleName(obstacle.obstacle) + "; " + subject.press->name + " has none.";
    finding.frees = {FreeingAct::ChooseWayRound, FreeingAct::AddPress};
    finding.press = subject.press->id;
    return finding;
}

Finding obstacleSolved(const Subject& subject, const ObstacleOnStyle& obstacle, WayRound way) {
    Finding finding = onLot(Rule::ObstacleSolved, Grade::StepAdded, subject);
    finding.what = wayRoundTitle(obstacle.obstacle, way);
    finding.why =
        subject.style.name + ": " + obstacleName(obstacle.obstacle) + " under the platen; one step is added.";
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
