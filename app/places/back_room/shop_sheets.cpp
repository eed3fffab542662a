// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/shop_sheets.h"

#include "app/desk/formats.h"
#include "core/orders/film_waste.h"
#include "core/trade/percentage_value.h"

#include <QCoreApplication>

#include <array>

namespace holdfast::app {

namespace {

QString oneDecimal(double number) {
    return valueWords(Decimal{number});
}

class ShopWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    explicit ShopWords(const ReckonedShop& shop)
        : m_shop(shop)
        , m_settings(shop.facts.settings) {}

    RoomSheet shop() {
        RoomSheet sheet;
        sheet.title = tr("The shop");
        sheet.summary = words(m_settings.shopName);
        begin(sheet, SettingsPart::Shop, tr("Name and currency"));
        add(sheet, tr("Name"), words(m_settings.shopName));
        add(sheet, tr("Orders are taken at"),
            m_settings.fairName.empty() ? tr("the workshop") : words(m_settings.fairName));
        add(sheet, tr("Orders are collected at"), printed(m_settings.collectAt));
        add(sheet, tr("When an edge lifts"), printed(m_settings.whenEdgeLifts));
        add(sheet, tr("Address"), printed(m_settings.address));
        add(sheet, tr("At the foot of invoices"), printed(m_settings.invoiceLines));
        add(sheet, tr("Currency"),
            tr("%1, written %2")
                .arg(words(m_settings.currency.code), money(Money{12345}, m_settings.currency)));
        begin(sheet, SettingsPart::Hours, tr("Hours at the press"));
        addWeek(sheet);
        add(sheet, tr("Closed on"), closedDays());
        add(sheet, tr("Other hours"), otherHours());
        add(sheet, tr("Allowance in promises"),
            tr("%1 % on top of the planned work").arg(m_settings.planMarginPercent));
        return sheet;
    }

    RoomSheet prices() {
        RoomSheet sheet;
        sheet.title = tr("Prices");
        sheet.summary =
            tr("%1 % margin, %2 a minute").arg(m_settings.marginPercent).arg(amount(m_settings.minuteRate));
        sheet.intro = tr("Price = blank + film with what is cut away round the decal + minutes + overhead, "
                         "plus the margin, rounded up. The fair table shows the cost below it.");
        begin(sheet, SettingsPart::Money, tr("What a price is made of"));
        add(sheet, tr("A minute of work"), amount(m_settings.minuteRate));
        add(sheet, tr("Overhead"), tr("%1 a garment").arg(amount(m_settings.overheadPerGarment)));
        if (m_settings.prices.by == PricedBy::MarkUp)
            add(sheet, tr("Mark-up"), tr("%1 % of the cost").arg(m_settings.prices.markUpPercent));
        else
            add(sheet, tr("Margin"), tr("%1 % of the price").arg(m_settings.marginPercent));
        add(sheet, tr("Rounded up to"), amount(m_settings.pricePoint));
        add(sheet, tr("Film round a decal"), filmRoundADecal());
        add(sheet, tr("Deposit"), deposit());
        addBill(sheet);
        addPriceList(sheet);
        sheet.note = tr("Tax may apply to what you sell: check local law.");
        return sheet;
    }

    RoomSheet work() {
        RoomSheet sheet;
        sheet.title = tr("Work and limits");
        sheet.summary = tr("%1 h rest, %2 mm between decals")
                            .arg(m_settings.restBeforeWash.count())
                            .arg(m_settings.decalGap.value);
        sheet.intro =
            tr("Used for promises and holds. The numbers a new shop comes with are common practice, "
               "with no published source; yours are better.");
        begin(sheet, SettingsPart::Washing, tr("Washing and stock"));
        add(sheet, tr("A full load"), kilograms(m_settings.washerHolds));
        add(sheet, tr("Time for a wash"), timeSpan(m_settings.washTakes));
        add(sheet, tr("Time for drying"), timeSpan(m_settings.dryingTakes));
        add(sheet, tr("Shrinking allowed"), tr("%1 %").arg(oneDecimal(m_settings.shrinkLimitPercent)));
        add(sheet, tr("Blanks arrive within"), dayCount(m_settings.blankLeadTime));
        add(sheet, tr("Film arrives within"), dayCount(m_settings.filmLeadTime));
        add(sheet, tr("Risk of running out"),
            tr("%1 %, until what is bought arrives").arg(m_settings.runOutPercent));
        add(sheet, tr("Bought to last for"), dayCount(m_settings.boughtToLast));
        add(sheet, tr("Carrying an unsold blank"), tr("%1 % of its price").arg(m_settings.keepingPercent));
        begin(sheet, SettingsPart::Cutting, tr("Cutting"));
        add(sheet, tr("Time for a cut"),
            tr("%1, from roll in to cut off").arg(timeSpan(m_settings.cutTakes)));
        add(sheet, tr("Weeding a decal"), timeSpan(m_settings.weedingTakes));
        add(sheet, tr("Between decals"), millimetres(m_settings.decalGap));
        add(sheet, tr("At the film’s edge"), millimetres(m_settings.edgeMargin));
        begin(sheet, SettingsPart::Pressing, tr("At the press and after"));
        add(sheet, tr("Likely scorched"),
            tr("when under heat %1 longer than the recipe says").arg(timeSpan(m_settings.mostOverUnderHeat)));
        add(sheet, tr("Rest before a wash"),
            tr("%1, better %2").arg(timeSpan(m_settings.restBeforeWash), timeSpan(m_settings.betterRest)));
        add(sheet, tr("A reading is valid for"), timeSpan(m_settings.readingsGoStaleAfter));
        return sheet;
    }

private:
    void addBill(RoomSheet& sheet) {
        const PriceRules& prices = m_settings.prices;
        begin(sheet, SettingsPart::Bill, tr("Many, rush, extras and tax"));
        QStringList many;
        for (const PriceForMany& rule : prices.forMany)
            many.append(tr("from %1, %2 % less").arg(rule.garments).arg(valueWords(decimalOf(rule.less))));
        add(sheet, tr("Many in one order"), many.isEmpty() ? tr("cost the same each") : many.join(tr("; ")));
        add(sheet, tr("Rush"),
            prices.rushWithin > Days{0}
                ? tr("within %1, %2 % more")
                      .arg(dayCount(prices.rushWithin), valueWords(decimalOf(prices.rushMore)))
                : tr("costs the same"));
        QStringList extras;
        for (const UsualExtra& extra : prices.extras)
            extras.append(QStringLiteral("%1 %2").arg(words(extra.words), amount(extra.amount)));
        add(sheet, tr("Usual extras"), extras.isEmpty() ? tr("none") : extras.join(tr("; ")));
        add(sheet, tr("A quotation is valid for"), dayCount(prices.quotationFor));
        add(sheet, tr("Tax"), taxOf(prices));
        if (!prices.taxNumber.empty())
            add(sheet, tr("Tax number"), words(prices.taxNumber));
    }

    static QString taxOf(const PriceRules& prices) {
        const QString tax = words(taxWords(prices.tax, prices.taxName));
        const QString rounded =
            prices.tax.by == TaxedBy::Line ? tr("rounded for each line") : tr("rounded for the total");
        switch (prices.tax.kind) {
        case TaxKind::None:
            return tr("none");
        case TaxKind::Included:
            return tr("%1 in the prices, %2").arg(tax, rounded);
        case TaxKind::Added:
            return tr("%1 added, %2").arg(tax, rounded);
        }
        return {};
    }

    void addPriceList(RoomSheet& sheet) {
        const PriceRules& prices = m_settings.prices;
        begin(sheet, SettingsPart::PriceList, tr("Price list"));
        add(sheet, tr("Prices are"),
            prices.by == PricedBy::List ? tr("those of the list") : tr("made from the cost"));
        add(sheet, tr("Styles on it"), QString::number(prices.stylePrices.size()));
        QStringList decals;
        for (const DecalPrice& decal : prices.decalPrices)
            decals.append(tr("to %1, %2").arg(millimetres(decal.upTo), amount(decal.price)));
        add(sheet, tr("Decals"), decals.isEmpty() ? tr("not on it") : decals.join(tr("; ")));
    }

    void begin(RoomSheet& sheet, SettingsPart part, const QString& title) {
        SlipTarget matter;
        matter.settings = part;
        m_deed = OpenSlip{SlipName::Settings, matter};
        RoomLine line;
        line.isHeading = true;
        line.name = title;
        line.offer = tr("Change");
        line.deed = m_deed;
        sheet.lines.append(line);
    }

    void add(RoomSheet& sheet, const QString& name, const QString& text) {
        RoomLine line;
        line.name = name;
        line.text = text;
        line.deed = m_deed;
        sheet.lines.append(line);
    }

    QString amount(Money value) const { return money(value, m_settings.currency); }

    static QString printed(const std::string& text) {
        return text.empty() ? tr("not set, not printed") : words(text);
    }

    // Days of the same hours that follow each other are on one line.
    void addWeek(RoomSheet& sheet) {
        const std::array<QString, 7> names{tr("Monday"), tr("Tuesday"),  tr("Wednesday"), tr("Thursday"),
                                           tr("Friday"), tr("Saturday"), tr("Sunday")};
        const auto hoursOf = [&](std::size_t fromMonday) { return m_settings.week[(fromMonday + 1) % 7]; };
        for (std::size_t first = 0; first < names.size();) {
            std::size_t last = first;
            while (last + 1 < names.size() && hoursOf(last + 1) == hoursOf(first))
                ++last;
            const auto& hours = hoursOf(first);
            add(sheet, first == last ? names[first] : tr("%1 to %2").arg(names[first], names[last]),
                hours ? tr("%1 to %2")
                            .arg(clock(LocalTime{LocalDate{}} + hours->opens),
                                 clock(LocalTime{LocalDate{}} + hours->closes))
                      : tr("closed"));
            first = last + 1;
        }
    }

    QString closedDays() const {
        QStringList days;
        for (const LocalDate day : m_settings.closedDays)
            days.append(date(day));
        return days.isEmpty() ? tr("no other days") : days.join(QStringLiteral(", "));
    }

    QString otherHours() const {
        QStringList days;
        for (const auto& [day, hours] : m_settings.otherHours)
            if (day >= m_shop.now.today())
                days.append(hoursOfDay(day, hours));
        return days.isEmpty() ? tr("on no single days") : days.join(QStringLiteral(", "));
    }

    QString filmRoundADecal() const {
        const FilmWaste waste = filmWaste(m_shop.facts.cutting, m_settings);
        return waste.isMeasured ? tr("%1 % of the decal’s own area, from the last %2 cuts")
                                      .arg(waste.percent)
                                      .arg(m_shop.facts.cutting.cuts)
                                : tr("%1 % of the decal’s own area, until the shop has cuts of its own")
                                      .arg(waste.percent);
    }

    QString deposit() const {
        if (m_settings.depositPercent == 0)
            return tr("not asked for");
        return m_settings.depositHolds ? tr("%1 % of the total; while it is short, the work is held")
                                             .arg(m_settings.depositPercent)
                                       : tr("%1 % of the total").arg(m_settings.depositPercent);
    }

    const ReckonedShop& m_shop;
    const ShopSettings& m_settings;
    RoomDeed m_deed;
};

} // namespace

RoomSheet shopSheet(const ReckonedShop& shop) {
    return ShopWords(shop).shop();
}

RoomSheet pricesSheet(const ReckonedShop& shop) {
    return ShopWords(shop).prices();
}

RoomSheet workSheet(const ReckonedShop& shop) {
    return ShopWords(shop).work();
}

} // namespace holdfast::app
