// SPDX-License-Identifier: GPL-3.0-or-later
// report holds: every garment that is held or cautioned, why, and what is needed.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

class HoldsReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::HoldsReport)

public:
    explicit HoldsReport(const ReckonedShop& shop)
        : m_shop(shop) {
        for (const auto& [garment, assessment] : shop.assessments)
            if (!spoken(assessment).empty())
                m_assessments.push_back(&assessment);
        // Earliest promise first, then the garment's own place in its order.
        std::ranges::stable_sort(m_assessments, {}, [&](const Assessment* each) {
            const Garment& garment = shop.facts.garments.at(each->garment);
            const Order& order = shop.facts.orderOf(garment);
            return std::tuple{order.promised, order.number, garment.position};
        });
    }

    QString text() const {
        QString whole = reportTitle(tr("Holds and cautions"), m_shop);
        if (m_assessments.empty())
            return whole + tr("Nothing is held.") + QLatin1Char('\n');
        TextTable table(
            {{tr("Garment")}, {tr("Blank")}, {tr("Promised")}, {tr("Grade")}, {tr("What")}, {tr("Needed")}});
        for (const Assessment* assessment : m_assessments) {
            const Garment& garment = m_shop.facts.garments.at(assessment->garment);
            for (const Finding* finding : spoken(*assessment)) {
                table.add({words(m_shop.facts.labelOf(garment)), garmentWords(m_shop, garment),
                           whenWords(m_shop.facts.orderOf(garment).promised, m_shop.now.today()),
                           gradeWords(*finding), words(finding->what), freesWords(*finding)});
                table.addNote(words(finding->why));
            }
        }
        return whole + table.text();
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("holds", m_shop);
        QJsonArray garments;
        for (const Assessment* assessment : m_assessments) {
            const Garment& garment = m_shop.facts.garments.at(assessment->garment);
            QJsonObject row = garmentJson(m_shop, garment);
            row.insert(QStringLiteral("stage"), words(stageCode(assessment->stage)));
            row.insert(QStringLiteral("held"), assessment->isHeld());
            QJsonArray findings;
            for (const Finding* finding : spoken(*assessment))
                findings.append(findingJson(*finding));
            row.insert(QStringLiteral("findings"), findings);
            garments.append(row);
        }
        whole.insert(QStringLiteral("garments"), garments);
        return whole;
    }

private:
    // Steps added are no obstacle: they are in the route.
    static std::vector<const Finding*> spoken(const Assessment& assessment) {
        std::vector<const Finding*> findings;
        for (const Finding& finding : assessment.findings)
            if (finding.grade != Grade::StepAdded)
                findings.push_back(&finding);
        return findings;
    }

    QString gradeWords(const Finding& finding) const {
        if (finding.grade == Grade::Caution)
            return tr("caution");
        return finding.isWaived ? tr("let through") : tr("hold");
    }

    static QString freesWords(const Finding& finding) {
        QStringList acts;
        for (const FreeingAct act : finding.frees)
            acts.append(words(freeingWords(act)));
        return acts.join(QStringLiteral("; "));
    }

    static QJsonObject findingJson(const Finding& finding) {
        QJsonArray frees;
        for (const FreeingAct act : finding.frees)
            frees.append(words(freeingWords(act)));
        return {{QStringLiteral("rule"), words(ruleCode(finding.rule))},
                {QStringLiteral("grade"),
                 finding.grade == Grade::Hold ? QStringLiteral("hold") : QStringLiteral("caution")},
                {QStringLiteral("waived"), finding.isWaived},
                {QStringLiteral("what"), words(finding.what)},
                {QStringLiteral("why"), words(finding.why)},
                {QStringLiteral("frees"), frees}};
    }

    const ReckonedShop& m_shop;
    std::vector<const Assessment*> m_assessments;
};

} // namespace

Report holdsReport(const ReckonedShop& shop) {
    const HoldsReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
