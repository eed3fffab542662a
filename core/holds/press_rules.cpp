// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the press a garment goes to.

#include "core/holds/rules.h"
#include "core/press/check_figures.h"
#include "core/trade/unit_words.h"

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

std::string checkedOn(const Subject& subject, const PressCheck& check) {
    return spokenDate(dateOf(subject.around.now.toLocal(check.at)));
}

std::string degreesOff(double offset) {
    return numberWords(std::abs(offset)) + " °C " + (offset < 0 ? "below" : "above");
}

} // namespace

void noPress(const Subject& subject, Findings& findings) {
    if (subject.press)
        return;
    Finding finding;
    finding.rule = Rule::NoPress;
    finding.what = "No press yet";
    finding.why = "The shop has 0 presses on record.";
    finding.frees = {FreeingAct::AddPress};
    findings.push_back(std::move(finding));
}

void pressCheckOverdue(const Subject& subject, Findings& findings) {
    if (!subject.press)
        return;
    const PressCheck* check = checkOf(subject);
    const auto every = subject.press->checkEvery;
    if (check && subject.around.now.instant - check->at <= every)
        return;
    Finding finding = onPress(Rule::PressCheckOverdue, Grade::Caution, *subject.press);
    finding.what = "Press check overdue";
    finding.why = subject.press->name + ": ";
    if (check) {
        const auto age = std::chrono::floor<Days>(subject.around.now.instant - check->at).count();
        finding.why += "last checked " + checkedOn(subject, *check) + ", " + countWords(age, "day") + " ago";
    } else {
        finding.why += "no check on record";
    }
    finding.why += "; a check is due every " + countWords(every.count(), "day") + ".";
    finding.frees = {FreeingAct::CheckPress};
    findings.push_back(std::move(finding));
}

namespace {

std::string whyMeanIsOff(const Press& press, const PressCheck& check, const CheckFigures& figures) {
    return "on average " + degreesOff(figures.meanOffset) + " the set " + temperatureWords(check.set) + ", " +
           numberWords(press.tolerance.value) + " °C allowed; dial in " + (figures.dialIn < 0 ? "−" : "+") +
           numberWords(std::abs(figures.dialIn)) + " °C and check again.";
}

std::string whySpotIsOff(const Press& press, const PressCheck& check, const CheckFigures& figures) {
    return "one spot " + degreesOff(figures.largestDeparture) + " the set " + temperatureWords(check.set) +
           ", " + numberWords(press.evenWithin.value) + " °C allowed.";
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
    finding.what = std::string(isMeanOff ? "Platen" : "One spot") + (off < 0 ? " too cool" : " too hot");
    finding.why = press.name + ", checked " + checkedOn(subject, *check) + ": " +
                  (isMeanOff ? whyMeanIsOff(press, *check, figures) : whySpotIsOff(press, *check, figures));
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
    finding.what = "Platen uneven";
    finding.why = subject.press->name + ", checked " + checkedOn(subject, *check) +
                  ": hottest and coolest spot " + numberWords(figures.spread) + " °C apart, " +
                  numberWords(even) + " °C allowed.";
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
        finding.what = "Pressed in " + std::to_string(pieces) + " pieces";
        finding.why = decal.describe() + " is " + sizeWords(decal.width, decal.height) + ", the platen of " +
                      subject.press->name + " " +
                      sizeWords(subject.press->platenWidth, subject.press->platenHeight) + ": " +
                      std::to_string(pieces) + " presses, lifted and overlapped, never slid.";
        finding.decal = decal.id;
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
