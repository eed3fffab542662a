// SPDX-License-Identifier: GPL-3.0-or-later
// report walk: the day at the press.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/aside_words.h"
#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace holdfast::app {

namespace {

class WalkReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::WalkReport)

public:
    explicit WalkReport(const ReckonedShop& shop)
        : m_shop(shop)
        , m_walk(walkOf(shop)) {}

    QString text() const {
        QString whole = reportTitle(tr("Press walk"), m_shop);
        if (m_walk.isEmpty())
            return whole + tr("Nothing to press.") + QLatin1Char('\n');
        if (m_walk.total > 0)
            whole +=
                m_walk.pressed == m_walk.total
                    ? tr("%1 of %2 pressed").arg(m_walk.pressed).arg(m_walk.total) + QStringLiteral("\n\n")
                    : tr("%1 of %2 pressed, ends about %3")
                              .arg(m_walk.pressed)
                              .arg(m_walk.total)
                              .arg(whenWords(local(m_walk.ends), today())) +
                          QStringLiteral("\n\n");
        int number = 0;
        for (const WalkRun& run : m_walk.runs)
            whole += runText(run, ++number);
        return whole + rackText() + asideText();
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("walk", m_shop);
        QJsonArray runs;
        for (const WalkRun& run : m_walk.runs)
            runs.append(runJson(run));
        QJsonArray rack;
        for (const RackEntry& entry : m_walk.rack) {
            QJsonObject row = garmentJson(m_shop, garment(entry.garment));
            row.insert(QStringLiteral("until"), localJson(m_shop, entry.until));
            row.insert(QStringLiteral("after"), words(entry.after));
            rack.append(row);
        }
        QJsonArray aside;
        for (const AsideEntry& entry : m_walk.aside)
            aside.append(asideJson(entry));
        whole.insert(QStringLiteral("pressed"), static_cast<qint64>(m_walk.pressed));
        whole.insert(QStringLiteral("total"), static_cast<qint64>(m_walk.total));
        whole.insert(QStringLiteral("ends"), m_walk.pressed < m_walk.total
                                                 ? QJsonValue(localJson(m_shop, m_walk.ends))
                                                 : QJsonValue());
        whole.insert(QStringLiteral("onPress"), labelOrNull(m_walk.onPress));
        whole.insert(QStringLiteral("next"), labelOrNull(m_walk.next));
        whole.insert(QStringLiteral("runs"), runs);
        whole.insert(QStringLiteral("rack"), rack);
        whole.insert(QStringLiteral("aside"), aside);
        return whole;
    }

private:
    const Garment& garment(GarmentId id) const { return m_shop.facts.garments.at(id); }
    LocalTime local(Instant instant) const { return m_shop.now.toLocal(instant); }
    LocalDate today() const { return m_shop.now.today(); }
    QString label(GarmentId id) const { return words(m_shop.facts.labelOf(garment(id))); }
    QJsonValue labelOrNull(std::optional<GarmentId> id) const {
        return id ? QJsonValue(label(*id)) : QJsonValue();
    }
    QString pressName(PressId id) const {
        const Press* press = m_shop.facts.presses.find(id);
        return press != nullptr ? words(press->name) : QString();
    }

    QString stateWords(const WalkEntry& entry) const {
        QString state;
        switch (entry.state) {
        case WalkState::Pressed:
            return tr("pressed");
        case WalkState::OnPress:
            return tr("on the press");
        case WalkState::Cooling:
            return tr("cooling");
        case WalkState::Planned:
            state = tr("planned");
            break;
        }
        if (entry.late.count() > 0)
            state = tr("%1, %2 late").arg(state, timeSpan(entry.late));
        if (entry.isAfterClosing)
            state = tr("%1, after closing").arg(state);
        return state;
    }

    static QString stateCode(WalkState state) {
        switch (state) {
        case WalkState::Pressed:
            return QStringLiteral("pressed");
        case WalkState::OnPress:
            return QStringLiteral("on-press");
        case WalkState::Cooling:
            return QStringLiteral("cooling");
        case WalkState::Planned:
            return QStringLiteral("planned");
        }
        return {};
    }

    QString runText(const WalkRun& run, int number) const {
        QString whole = tr("Run %1, %2, %3, %4–%5")
                            .arg(number)
                            .arg(pressName(run.press), celsius(run.temperature), clock(local(run.begins)),
                                 clock(local(run.ends)));
        if (run.isDone())
            whole += tr(", done");
        else if (run.changedFrom && run.change.count() > 0)
            whole += (*run.changedFrom < run.temperature ? tr(", after heating up from %1 (%2)")
                                                         : tr(", after cooling down from %1 (%2)"))
                         .arg(celsius(*run.changedFrom), timeSpan(run.change));
        whole += QLatin1Char('\n');
        TextTable table({{tr("Time")}, {tr("Garment")}, {tr("Blank")}, {tr("Decals")}, {tr("State")}});
        for (const WalkEntry& entry : run.entries) {
            const Garment& each = garment(entry.garment);
            QStringList decals;
            for (const Decal& decal : each.decals)
                decals.append(words(decal.describe()));
            table.add({clock(local(entry.begins)), label(entry.garment), garmentWords(m_shop, each),
                       decals.join(QStringLiteral("; ")), stateWords(entry)});
        }
        return whole + table.text(2) + QLatin1Char('\n');
    }

    QJsonObject runJson(const WalkRun& run) const {
        QJsonArray garments;
        for (const WalkEntry& entry : run.entries) {
            QJsonObject row = garmentJson(m_shop, garment(entry.garment));
            row.insert(QStringLiteral("state"), stateCode(entry.state));
            row.insert(QStringLiteral("begins"), localJson(m_shop, entry.begins));
            row.insert(QStringLiteral("ends"), localJson(m_shop, entry.ends));
            row.insert(QStringLiteral("lateSeconds"), static_cast<qint64>(entry.late.count()));
            row.insert(QStringLiteral("afterClosing"), entry.isAfterClosing);
            garments.append(row);
        }
        return {{QStringLiteral("press"), pressName(run.press)},
                {QStringLiteral("celsius"), run.temperature.value},
                {QStringLiteral("changeSeconds"), static_cast<qint64>(run.change.count())},
                {QStringLiteral("changedFromCelsius"),
                 run.changedFrom ? QJsonValue(run.changedFrom->value) : QJsonValue()},
                {QStringLiteral("begins"), localJson(m_shop, run.begins)},
                {QStringLiteral("ends"), localJson(m_shop, run.ends)},
                {QStringLiteral("garments"), garments}};
    }

    QString rackText() const {
        if (m_walk.rack.empty())
            return {};
        TextTable table({{tr("Cool at")}, {tr("Garment")}, {tr("Blank")}, {tr("Then")}});
        for (const RackEntry& entry : m_walk.rack)
            table.add({clock(local(entry.until)), label(entry.garment),
                       garmentWords(m_shop, garment(entry.garment)), words(entry.after)});
        return tr("Cooling rack") + QLatin1Char('\n') + table.text(2) + QLatin1Char('\n');
    }

    QString asideText() const {
        if (m_walk.aside.empty())
            return {};
        TextTable table({{tr("Garment")}, {tr("Blank")}, {tr("Promised")}, {tr("What")}, {tr("Needed")}});
        for (const AsideEntry& entry : m_walk.aside) {
            table.add({label(entry.garment), garmentWords(m_shop, garment(entry.garment)),
                       whenWords(m_shop.facts.orderOf(garment(entry.garment)).promised, today()),
                       entry.isHeld ? tr("Held: %1").arg(words(entry.what)) : words(entry.what),
                       neededInWords(m_shop, entry)});
            table.addNote(words(entry.why));
        }
        return tr("Aside") + QLatin1Char('\n') + table.text(2);
    }

    QJsonObject asideJson(const AsideEntry& entry) const {
        const QString needed = neededFor(m_shop, entry);
        QJsonObject row = garmentJson(m_shop, garment(entry.garment));
        row.insert(QStringLiteral("stage"), words(stageCode(entry.stage)));
        row.insert(QStringLiteral("held"), entry.isHeld);
        row.insert(QStringLiteral("rule"),
                   entry.finding ? QJsonValue(words(ruleCode(entry.finding->rule))) : QJsonValue());
        row.insert(QStringLiteral("what"), words(entry.what));
        row.insert(QStringLiteral("why"), words(entry.why));
        row.insert(QStringLiteral("frees"), needed.isEmpty() ? QJsonValue() : QJsonValue(needed));
        return row;
    }

    const ReckonedShop& m_shop;
    const Walk m_walk;
};

} // namespace

Report walkReport(const ReckonedShop& shop) {
    const WalkReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
