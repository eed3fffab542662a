// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the press a garment goes to.

#include "core/holds/rules.h"
#include "core/press/check_figures.h"
#include "core/trade/count_phrases.h"

#include <cmath>

namespace holdfast {

namespace {

Finding onPress(Rule rule, Grade grade, const Press& press) {
    Finding finding;
    finding.rule = rule;
    finding.grade = grade;
    finding.press = press.id;
    return finding;
}

const PressCheck* checkOf(const Subject& subject) {
    const PressCheck* check = subject.press ? subject.facts().lastCheck(subject.press->id) : nullptr;
    return check && !check->readings.empty() ? check : nullptr;
}

DateWithYear checkedOn(const Subject& subject, const PressCheck& check) {
    return {dateOf(subject.around.now.toLocal(check.at))};
}

Sentence degreesOff(double offset, Celsius set) {
    const std::vector<NamedValue> values{{"degrees", Celsius{std::abs(offset)}}, {"set", set}};
    return offset < 0 ? said("{degrees} below the set {set}", values)
                      : said("{degrees} above the set {set}", values);
}

Sentence whyCheckIsOverdue(const Subject& subject, const PressCheck* check) {
    const std::string& press = subject.press->name;
    const Value due = dayCount(subject.press->checkEvery.count());
    if (!check)
        return said("{press}: no check on record; a check is due every {due}.",
                    {{"press", press}, {"due", due}});
    const auto age = std::chrono::floor<Days>(subject.around.now.instant - check->at).count();
    return said("{press}: last checked {on}, {age} ago; a check is due every {due}.",
                {{"press", press}, {"on", checkedOn(subject, *check)}, {"age", dayCount(age)}, {"due", due}});
}

} // namespace

void noPress(const Subject& subject, Findings& findings) {
    if (subject.press)
        return;
    Finding finding;
    finding.rule = Rule::NoPress;
    finding.what = said("No press yet");
    finding.why = subject.around.facts.presses.empty() ? said("The shop has 0 presses on record.")
                                                       : said("Every press on record is retired.");
    finding.frees = {FreeingAct::AddPress};
    findings.push_back(std::move(finding));
}

void pressCheckOverdue(const Subject& subject, Findings& findings) {
    if (!subject.press)
        return;
    const PressCheck* check = checkOf(subject);
    if (check && subject.around.now.instant - check->at <= subject.press->checkEvery)
        return;
    Finding finding = onPress(Rule::PressCheckOverdue, Grade::Caution, *subject.press);
    finding.what = said("Press check overdue");
    finding.why = whyCheckIsOverdue(subject, check);
    finding.frees = {FreeingAct::CheckPress};
    findings.push_back(std::move(finding));
}

namespace {

Sentence whyMeanIsOff(const Subject& subject, const PressCheck& check, const CheckFigures& figures) {
    const Press& press = *subject.press;
    return said(
        "{press}, checked {on}: on average {off}, {allowed} allowed; dial in {sign}{dialIn} and check again.",
        {{"press", press.name},
         {"on", checkedOn(subject, check)},
         {"off", degreesOff(figures.meanOffset, check.set)},
         {"allowed", press.tolerance},
         {"sign", figures.dialIn < 0 ? "−" : "+"},
         {"dialIn", Celsius{std::abs(figures.dialIn)}}});
}

Sentence whySpotIsOff(const Subject& subject, const PressCheck& check, const CheckFigures& figures) {
    const Press& press = *subject.press;
    return said("{press}, checked {on}: one spot {off}, {allowed} allowed.",
                {{"press", press.name},
                 {"on", checkedOn(subject, check)},
                 {"off", degreesOff(figures.largestDeparture, check.set)},
                 {"allowed", press.evenWithin}});
}

Sentence pressFault(bool isMeanOff, double off) {
    if (isMeanOff)
        return off < 0 ? said("Platen too cool") : said("Platen too hot");
    return off < 0 ? said("One spot too cool") : said("One spot too hot");
}

} // namespace

void pressOff(const Subject& subject, Findings& findings) {
    const PressCheck* check = checkOf(subject);
    if (!check)
        return;
    const Press& press = *subject.press;
    const CheckFigures figures = figuresOf(*check);
    const bool isMeanOff = std::abs(figures.meanOffset) > press.tolerance.value;
    const bool isSpotOff = std::abs(figures.largestDeparture) > press.evenWithin.value;
    if (!isMeanOff && !isSpotOff)
        return;
    const double off = isMeanOff ? figures.meanOffset : figures.largestDeparture;
    Finding finding = onPress(Rule::PressOff, Grade::Hold, press);
    finding.what = pressFault(isMeanOff, off);
    finding.why = isMeanOff ? whyMeanIsOff(subject, *check, figures) : whySpotIsOff(subject, *check, figures);
    finding.frees = {FreeingAct::CheckPress};
    findings.push_back(std::move(finding));
}

void pressUneven(const Subject& subject, Findings& findings) {
    const PressCheck* check = checkOf(subject);
    if (!check)
        return;
    const CheckFigures figures = figuresOf(*check);
    const double even = subject.press->evenWithin.value;
    if (figures.spread <= even)
        return;
    Finding finding = onPress(Rule::PressUneven, Grade::Hold, *subject.press);
    finding.what = said("Platen uneven");
    finding.why = said("{press}, checked {on}: hottest and coolest spot {spread} apart, {allowed} allowed.",
                       {{"press", subject.press->name},
                        {"on", checkedOn(subject, *check)},
                        {"spread", Celsius{figures.spread}},
                        {"allowed", subject.press->evenWithin}});
    finding.frees = {FreeingAct::CheckPress};
    findings.push_back(std::move(finding));
}

void decalBeyondPlaten(const Subject& subject, Findings& findings) {
    if (!subject.press)
        return;
    for (const Decal& decal : subject.garment.decals) {
        const int pieces = piecesOn(*subject.press, decal).count();
        if (pieces <= 1)
            continue;
        Finding finding = onPress(Rule::DecalBeyondPlaten, Grade::StepAdded, *subject.press);
        finding.what = said("Pressed in {pieces} parts", {{"pieces", pieces}});
        finding.why = said("{decal} is {size}, the platen of {press} {platen}: {pieces} presses, lifted and "
                           "overlapped, never slid.",
                           {{"decal", decal.describe()},
                            {"size", Extent{decal.width, decal.height}},
                            {"press", subject.press->name},
                            {"platen", Extent{subject.press->platenWidth, subject.press->platenHeight}},
                            {"pieces", pieces}});
        finding.decal = decal.id;
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
