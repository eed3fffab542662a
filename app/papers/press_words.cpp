// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/press_words.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace holdfast::app {

namespace {

struct PressWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PressWords)
};

QString detailWords(const RouteStep& step) {
    return words(step.detail).replace(QStringLiteral(" · "), QStringLiteral(", "));
}

QString withDetail(const QString& title, const RouteStep& step) {
    return step.detail.empty() ? title : PressWords::tr("%1 %2").arg(title, detailWords(step));
}

// Empty: it goes without saying. `cooled` is how long it lay before this step.
QString stepWords(const RouteStep& step, Seconds cooled) {
    const QString title = withinLine(words(step.title));
    switch (step.kind) {
    case StepKind::WayRound:
        return step.detail.empty() ? title : PressWords::tr("%1, %2").arg(title, detailWords(step));
    case StepKind::Preheat:
    case StepKind::Press:
    case StepKind::Turn:
        return withDetail(title, step);
    case StepKind::PeelCarrier: {
        const QString peel = inShort(words(step.title));
        return cooled.count() > 0 ? PressWords::tr("%1 after about %2").arg(peel, timeSpan(cooled)) : peel;
    }
    case StepKind::FinishFront:
        return PressWords::tr("cover sheet, front %1").arg(detailWords(step));
    case StepKind::FinishBack:
        return PressWords::tr("cover sheet, back %1").arg(detailWords(step));
    case StepKind::ReadTag:
    case StepKind::LintRoll:
    case StepKind::PlaceDecal:
    case StepKind::Cool:
    case StepKind::LookForTexture:
        return {};
    }
    return {};
}

} // namespace

QString heatWords(const Route& route) {
    QStringList passes;
    for (const RouteStep& step : route.steps) {
        if (step.kind != StepKind::Press || !step.temperature)
            continue;
        const QString pass = QStringLiteral("%1 %2").arg(celsius(*step.temperature), timeSpan(step.platen));
        if (!passes.contains(pass))
            passes << pass;
    }
    return passes.join(PressWords::tr(", then "));
}

QString workWords(const Route& route) {
    QStringList steps;
    Seconds cooled{0};
    StepKind before = StepKind::ReadTag;
    for (const RouteStep& step : route.steps) {
        const QString said = stepWords(step, cooled);
        const bool isUnderSameSheet = step.kind == StepKind::FinishBack && before == StepKind::FinishFront;
        if (isUnderSameSheet)
            steps.back() = PressWords::tr("%1, back %2").arg(steps.back(), detailWords(step));
        else if (!said.isEmpty() && (steps.isEmpty() || steps.back() != said))
            steps << said;
        cooled = step.waiting;
        before = step.kind;
    }
    QString all = steps.join(QStringLiteral("; "));
    if (!all.isEmpty())
        all[0] = all[0].toUpper();
    return all;
}

} // namespace holdfast::app
