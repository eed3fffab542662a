// SPDX-License-Identifier: GPL-3.0-or-later
// report promise: the day an order of one garment taken now could be promised, style by style; and for each
// open order whether the plan of the press keeps its promise.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"
#include "core/garments/placement_presets.h"
#include "core/orders/promise.h"
#include "core/orders/promise_hours.h"
#include "core/shop/promise_again.h"
#include "core/shop/promised_load.h"
#include "core/shop/settled_day.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>
#include <tuple>

namespace holdfast::app {

namespace {

// What is asked for where only the style is: the blank that is soonest at the press, in the film to use up
// first of those that suit it.
struct Asked {
    const BlankStyle* style = nullptr;
    const BlankLot* lot = nullptr;
    const Film* film = nullptr; // none: no film suits it
};

class PromiseReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PromiseReport)

public:
    explicit PromiseReport(const ReckonedShop& shop)
        : m_shop(shop)
        , m_promised(promisedLoad(shop)) {
        for (const BlankStyle& style : shop.facts.styles)
            if (const auto asked = style.isRetired ? std::nullopt : likeliest(style))
                m_offers.push_back({*asked, promise(*asked)});
        std::ranges::stable_sort(m_offers, {}, [](const Offer& offer) { return offer.asked.style->name; });
        for (const Order& order : shop.facts.orders)
            if (order.state == OrderState::Confirmed)
                m_orders.push_back(&order);
        std::ranges::stable_sort(
            m_orders, {}, [](const Order* order) { return std::tuple{order->promised, order->number}; });
    }

    QString text() const {
        QString whole = reportTitle(tr("Promises"), m_shop);
        whole += tr("One garment ordered now") + QLatin1Char('\n');
        if (m_offers.empty()) {
            whole += QStringLiteral("  %1\n").arg(tr("No blank hangs on the rail."));
        } else {
            TextTable table({{tr("Style")}, {tr("Blank")}, {tr("Film")}, {tr("Ready")}, {tr("By way of")}});
            for (const Offer& offer : m_offers)
                table.add(
                    {words(offer.asked.style->name), blankWords(offer.asked), filmWords(offer.asked),
                     readyWords(offer),
                     offer.promise.ok() ? pathWords(*offer.promise) : words(offer.promise.error().message)});
            whole += table.text(2);
        }
        whole += QLatin1Char('\n') + tr("Open orders") + QLatin1Char('\n');
        if (m_orders.empty())
            return whole + QStringLiteral("  %1\n").arg(tr("None."));
        using Side = TextTable::Side;
        TextTable table({{tr("No."), Side::Right},
                         {tr("Customer")},
                         {tr("Garments"), Side::Right},
                         {tr("Promised")},
                         {tr("Plan")},
                         {tr("Why")}});
        for (const Order* order : m_orders) {
            const Outlook seen = outlook(*order);
            table.add({QString::number(order->number), customerName(*order),
                       QString::number(m_shop.facts.garmentsOf(order->id).size()),
                       whenWords(order->promised, today()), seen.words, seen.why});
        }
        return whole + table.text(2);
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("promise", m_shop);
        QJsonArray offers;
        for (const Offer& offer : m_offers)
            offers.append(offerJson(offer));
        QJsonArray orders;
        for (const Order* order : m_orders) {
            const Outlook seen = outlook(*order);
            orders.append(QJsonObject{
                {QStringLiteral("order"), static_cast<qint64>(order->number)},
                {QStringLiteral("customer"), customerName(*order)},
                {QStringLiteral("promised"), localJson(order->promised)},
                {QStringLiteral("plan"), seen.code},
                {QStringLiteral("ready"), seen.readyAt ? QJsonValue(localJson(*seen.readyAt)) : QJsonValue()},
                {QStringLiteral("soonest"),
                 seen.soonest ? QJsonValue(localJson(*seen.soonest)) : QJsonValue()},
                {QStringLiteral("lateSeconds"), static_cast<qint64>(seen.late.count())},
                {QStringLiteral("afterClosingSeconds"), static_cast<qint64>(seen.afterClosing.count())},
                {QStringLiteral("why"), seen.why}});
        }
        whole.insert(QStringLiteral("offers"), offers);
        whole.insert(QStringLiteral("orders"), orders);
        return whole;
    }

private:
    struct Offer {
        Asked asked;
        Result<Promise> promise;
    };
    struct Outlook {
        QString code; // "kept", "late", "waits"
        QString words;
        QString why;
        std::optional<LocalTime> readyAt;
        std::optional<LocalTime> soonest; // in opening hours, every other promise kept; of what waits, or
                                          // would be kept only after closing
        Seconds late{0};
        Seconds afterClosing{0}; // of the plan: what the maker works outside opening hours for it
    };

    LocalDate today() const { return m_shop.now.today(); }

    // ── one garment ordered now ──

    // 0: may go to the press as it is; 1: drying; 2: to be washed.
    int waitOf(const BlankLot& lot, const BlankStyle& style) const {
        const WashLoad* load = m_shop.facts.lastLoadOf(lot);
        if (!style.washedFirst())
            return 0;
        if (load == nullptr || load->leftSoftener())
            return 2;
        return load->isDry() ? 0 : 1;
    }

    std::optional<Asked> likeliest(const BlankStyle& style) const {
        Asked asked{&style, nullptr, nullptr};
        auto best = std::tuple{0, std::int64_t{0}};
        for (const BlankLot& lot : m_shop.facts.lots) {
            const std::int64_t units = lot.style == style.id ? m_shop.facts.freeUnits(lot) : 0;
            const auto order = std::tuple{waitOf(lot, style), -units};
            if (units > 0 && (asked.lot == nullptr || order < best)) {
                asked.lot = &lot;
                best = order;
            }
        }
        if (asked.lot == nullptr)
            return std::nullopt;
        asked.film = filmFor(style);
        return asked;
    }

    static bool suits(const Film& film, const BlankStyle& style) {
        return film.recipe && std::ranges::none_of(fitness(film, style), &Finding::holds);
    }

    const Film* filmFor(const BlankStyle& style) const {
        for (const RollForecast& forecast : m_shop.allotment.useFirst) {
            const Film& film = m_shop.facts.films.at(m_shop.facts.rolls.at(forecast.roll).film);
            if (forecast.mayBeUsed && forecast.left > forecast.allotted && suits(film, style))
                return &film;
        }
        const auto found = std::ranges::find_if(
            m_shop.facts.films, [&](const Film& film) { return !film.isRetired && suits(film, style); });
        return found == m_shop.facts.films.end() ? nullptr : &*found;
    }

    Result<Promise> promise(const Asked& asked) const {
        if (asked.film == nullptr)
            return plainError(said("No film of the shop suits this style."));
        Garment garment;
        garment.style = asked.style->id;
        garment.size = asked.lot->size;
        garment.colour = asked.lot->colour;
        const auto presets = presetsFor(asked.style->outline);
        Decal decal;
        decal.id = DecalId{1};
        decal.film = asked.film->id;
        decal.content = Artwork{"heron"};
        if (!presets.empty()) {
            decal.placement = presets.front().placement;
            decal.below = presets.front().below;
            decal.width = presets.front().wide;
        }
        decal.height = decal.width;
        garment.decals = {decal};
        AskedGarment one{garment.style,
                         garment.size,
                         garment.colour,
                         {{decal.film, decal.width, decal.height}},
                         Seconds{0}};
        one.pressTime = holdfast::pressTime(routeOf(m_shop.facts, garment));
        return promiseFor(std::span{&one, 1}, m_shop.facts, m_promised, m_shop.now);
    }

    QString blankWords(const Asked& asked) const {
        const Colour* colour = asked.style->colour(asked.lot->colour);
        return QStringLiteral("%1, %2").arg(words(asked.lot->size),
                                            colour != nullptr ? words(colour->name) : QString());
    }

    QString readyWords(const Offer& offer) const {
        if (offer.promise.ok())
            return whenWords(offer.promise->readyAt, today());
        return offer.asked.film != nullptr ? tr("not within a year") : QStringLiteral("–");
    }

    static QString filmWords(const Asked& asked) {
        return asked.film != nullptr ? words(asked.film->name()) : tr("none suits it");
    }

    static QString pathWords(const Promise& promise) {
        QStringList steps;
        for (const PromiseStep& step : promise.path)
            steps.append(QStringLiteral("%1 %2").arg(words(step.words), words(step.when)));
        return steps.join(QStringLiteral(", "));
    }

    QJsonObject offerJson(const Offer& offer) const {
        QJsonArray path;
        if (offer.promise.ok())
            for (const PromiseStep& step : offer.promise->path)
                path.append(QJsonObject{{QStringLiteral("step"), words(step.words)},
                                        {QStringLiteral("at"), localJson(step.at)},
                                        {QStringLiteral("when"), words(step.when)}});
        const Colour* colour = offer.asked.style->colour(offer.asked.lot->colour);
        return {{QStringLiteral("style"), words(offer.asked.style->name)},
                {QStringLiteral("size"), words(offer.asked.lot->size)},
                {QStringLiteral("colour"), colour != nullptr ? words(colour->name) : QString()},
                {QStringLiteral("film"),
                 offer.asked.film != nullptr ? QJsonValue(words(offer.asked.film->name())) : QJsonValue()},
                {QStringLiteral("ready"),
                 offer.promise.ok() ? QJsonValue(localJson(offer.promise->readyAt)) : QJsonValue()},
                {QStringLiteral("why"),
                 words(offer.promise.ok() ? offer.promise->why : offer.promise.error().message)},
                {QStringLiteral("path"), path}};
    }

    // ── open orders ──

    QString customerName(const Order& order) const {
        const Customer* customer = m_shop.facts.customers.find(order.customer);
        return customer != nullptr ? words(customer->name) : QString();
    }

    // When a garment is ready, by what was done or is planned; none while it waits for something else.
    std::optional<Instant> readyAt(const Garment& garment) const {
        const Assessment& assessment = m_shop.of(garment.id);
        if (garment.handedOverAt)
            return *garment.handedOverAt;
        if (assessment.restUntil)
            return *assessment.restUntil;
        if (const PlannedGarment* planned = m_shop.plan.find(garment.id))
            return planned->ends + assessment.route.restAfter;
        return std::nullopt;
    }

    // The plan of the press runs on from now without a break. What of it lies outside opening hours until the
    // order's last garment is pressed.
    Seconds afterClosing(const Order& order) const {
        Instant pressed = m_shop.now.instant;
        for (const Garment* garment : m_shop.facts.garmentsOf(order.id))
            if (const PlannedGarment* planned = m_shop.plan.find(garment->id))
                pressed = std::max(pressed, planned->ends);
        return outsideHours(m_shop.facts.settings, m_shop.now, pressed);
    }

    Outlook outlook(const Order& order) const {
        std::optional<Instant> last;
        QStringList waiting;
        for (const Garment* garment : m_shop.facts.garmentsOf(order.id)) {
            const auto ready = readyAt(*garment);
            if (ready && (!last || *ready > *last))
                last = ready;
            if (!ready)
                waiting.append(waitWords(*garment));
        }
        const Instant promised = m_shop.now.toInstant(order.promised);
        Outlook seen;
        if (!waiting.isEmpty() || !last) {
            seen.code = QStringLiteral("waits");
            seen.why = waiting.join(QStringLiteral("; "));
            seen.late = std::max(Seconds{0}, m_shop.now.instant - promised);
            // What holds it for good leaves no day that could be said.
            if (whatUnsettlesDay(m_shop, order) != nullptr) {
                seen.words = tr("held, no day yet");
                return seen;
            }
            if (const auto again = promiseAgain(m_shop, order.id); again.ok())
                seen.soonest = again->readyAt;
            seen.words = waitingWords(seen, order);
            return seen;
        }
        seen.readyAt = m_shop.now.toLocal(*last);
        seen.late = std::max(Seconds{0}, *last - promised);
        seen.code = seen.late.count() > 0 ? QStringLiteral("late") : QStringLiteral("kept");
        seen.afterClosing = afterClosing(order);
        if (seen.afterClosing.count() > 0 && seen.late.count() == 0)
            sayWhenKeptInHours(seen, order);
        seen.words = plannedWords(seen);
        return seen;
    }

    // An order that the plan keeps, but only after closing, may be kept in the hours of a later day too.
    void sayWhenKeptInHours(Outlook& seen, const Order& order) const {
        const auto again = promiseAgain(m_shop, order.id);
        if (!again.ok())
            return;
        seen.soonest = again->readyAt;
        if (*seen.soonest > order.promised)
            return;
        seen.readyAt = seen.soonest;
        seen.afterClosing = Seconds{0};
    }

    QString plannedWords(const Outlook& seen) const {
        const QString when = whenWords(*seen.readyAt, today());
        const QString over = timeSpan(seen.afterClosing);
        if (seen.late.count() > 0)
            return seen.afterClosing.count() > 0
                       ? tr("%1 late with %2 after closing, ready %3").arg(timeSpan(seen.late), over, when)
                       : tr("%1 late, ready %2").arg(timeSpan(seen.late), when);
        return seen.afterClosing.count() > 0 ? tr("kept with %1 after closing, ready %2").arg(over, when)
                                             : tr("kept, ready %1").arg(when);
    }

    QString waitingWords(const Outlook& seen, const Order& order) const {
        if (seen.late.count() > 0)
            return tr("waits, %1 late already").arg(timeSpan(seen.late));
        if (!seen.soonest)
            return tr("waits");
        return *seen.soonest <= order.promised
                   ? tr("waits, can be kept")
                   : tr("waits, %1 at the soonest").arg(whenWords(*seen.soonest, today()));
    }

    QString waitWords(const Garment& garment) const {
        const Assessment& assessment = m_shop.of(garment.id);
        const Finding* hold = assessment.firstHold();
        return QStringLiteral("%1 %2").arg(
            words(m_shop.facts.labelOf(garment)),
            words(hold != nullptr ? hold->what : stageWords(assessment.stage)));
    }

    const ReckonedShop& m_shop;
    const Promised m_promised;
    std::vector<Offer> m_offers;
    std::vector<const Order*> m_orders;
};

} // namespace

Report promiseReport(const ReckonedShop& shop) {
    const PromiseReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
