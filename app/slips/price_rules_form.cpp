// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/price_rules_form.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "core/trade/limits.h"
#include "core/trade/percentage_value.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace holdfast::app {

namespace {

class PriceForm {
    Q_DECLARE_TR_FUNCTIONS(PriceForm)
};

constexpr std::int64_t kLongestDecal = 2'000; // mm
constexpr std::int64_t kMostInOrder = 200;    // garments

QString percentWords(Percentage share) {
    return valueWords(decimalOf(share));
}

QStringList typedParts(const QString& text) {
    static const QRegularExpression between(QStringLiteral("[;\\n]"));
    QStringList parts;
    for (const QString& part : text.split(between, Qt::SkipEmptyParts))
        if (!part.trimmed().isEmpty())
            parts.append(part.trimmed());
    return parts;
}

// "12: 5 %" as 12 and "5 %"; nothing before the colon, or no colon, is no part.
std::optional<std::pair<std::int64_t, std::string>> numberAndRest(const QString& part, std::int64_t most) {
    const auto colon = part.indexOf(u':');
    bool isNumber = false;
    const qlonglong number = colon < 0 ? 0 : part.left(colon).trimmed().toLongLong(&isNumber);
    if (!isNumber || number < 1 || number > most)
        return std::nullopt;
    return std::pair{static_cast<std::int64_t>(number), trimmed(part.mid(colon + 1).toStdString())};
}

QString forManyText(const PriceRules& prices) {
    QStringList parts;
    for (const PriceForMany& rule : prices.forMany)
        parts.append(QStringLiteral("%1: %2 %").arg(rule.garments).arg(percentWords(rule.less)));
    return parts.join(QStringLiteral("; "));
}

void readForMany(Form& form, PriceRules& prices) {
    prices.forMany.clear();
    for (const QString& part : typedParts(form.text("forMany"))) {
        const auto read = numberAndRest(part, kMostInOrder);
        const auto less = read ? parsePercentage(read->second) : std::nullopt;
        if (less)
            prices.forMany.push_back({static_cast<int>(read->first), *less});
        else
            form.setError(
                "forMany",
                PriceForm::tr("“%1”: garments and what they cost less, such as 12: 5 %.").arg(part));
    }
}

QString extrasText(const ShopSettings& settings) {
    QStringList parts;
    for (const UsualExtra& extra : settings.prices.extras)
        parts.append(
            QStringLiteral("%1: %2").arg(words(extra.words), moneyBare(extra.amount, settings.currency)));
    return parts.join(QStringLiteral("; "));
}

void readExtras(Form& form, ShopSettings& settings) {
    settings.prices.extras.clear();
    for (const QString& part : typedParts(form.text("extras"))) {
        const auto colon = part.lastIndexOf(u':');
        const auto amount = parseAmount(part.mid(colon + 1).toStdString(), settings.currency);
        if (colon > 0 && amount)
            settings.prices.extras.push_back({trimmed(part.left(colon).toStdString()), *amount});
        else
            form.setError("extras", PriceForm::tr("“%1”: words and an amount, such as Gift wrap: %2.")
                                        .arg(part, moneyBare(Money{250}, settings.currency)));
    }
}

Percentage readPercent(Form& form, std::string_view name) {
    const QString text = form.text(name);
    const auto read = text.trimmed().isEmpty() ? Percentage{} : parsePercentage(text.toStdString());
    if (!read)
        form.setError(name, PriceForm::tr("A percentage such as 20 or 7.5."));
    return read.value_or(Percentage{});
}

void addTax(Form& form, const PriceRules& prices) {
    const TaxRule& tax = prices.tax;
    form.section(PriceForm::tr("Tax"));
    form.segments("taxKind", PriceForm::tr("Prices"),
                  {PriceForm::tr("without tax"), PriceForm::tr("include tax"), PriceForm::tr("plus tax")},
                  static_cast<int>(tax.kind));
    form.pair();
    form.number("taxRate", PriceForm::tr("Rate of tax"), QStringLiteral("%"), percentWords(tax.rate));
    form.line("taxName", PriceForm::tr("It is called"), words(prices.taxName))
        ->setPlaceholder(PriceForm::tr("Tax"));
    form.line("taxNumber", PriceForm::tr("Tax number"), words(prices.taxNumber))
        ->setPlaceholder(PriceForm::tr("for papers; empty: not printed"));
    form.segments("taxedBy", PriceForm::tr("Tax is rounded"),
                  {PriceForm::tr("for each line"), PriceForm::tr("for the total")}, static_cast<int>(tax.by));
    form.segments("taxRounding", PriceForm::tr("Half a coin goes"),
                  {PriceForm::tr("up"), PriceForm::tr("to the even one")}, static_cast<int>(tax.rounding));
    form.note(PriceForm::tr("Whether you charge tax, at which rate, how it is rounded and what papers must "
                            "say is for local law: ask whoever does your books. Orders that were taken keep "
                            "the tax they were taken with."));
    for (const char* name : {"taxName", "taxNumber"})
        form.optional(name);
}

// A style that is retired has its price only where it has one already.
std::vector<const BlankStyle*> pricedStyles(const ShopFacts& facts) {
    std::vector<const BlankStyle*> styles;
    for (const BlankStyle& style : facts.styles)
        if (!style.isRetired || facts.settings.prices.stylePrices.contains(style.id))
            styles.push_back(&style);
    return styles;
}

std::string priceField(BlankStyleId style) {
    return "stylePrice" + std::to_string(style.value);
}

QString decalPricesText(const ShopSettings& settings) {
    QStringList parts;
    for (const DecalPrice& decal : settings.prices.decalPrices)
        parts.append(
            QStringLiteral("%1: %2").arg(decal.upTo.value).arg(moneyBare(decal.price, settings.currency)));
    return parts.join(QStringLiteral("; "));
}

void readDecalPrices(Form& form, ShopSettings& settings) {
    settings.prices.decalPrices.clear();
    for (const QString& part : typedParts(form.text("decalPrices"))) {
        const auto read = numberAndRest(part, kLongestDecal);
        const auto price = read ? parseAmount(read->second, settings.currency) : std::nullopt;
        if (price)
            settings.prices.decalPrices.push_back({Millimetres{read->first}, *price});
        else
            form.setError("decalPrices", PriceForm::tr("“%1”: a length in mm and an amount, such as 100: %2.")
                                             .arg(part, moneyBare(Money{250}, settings.currency)));
    }
}

} // namespace

void addBillRules(Form& form, const ShopSettings& settings) {
    const PriceRules& prices = settings.prices;
    form.section(PriceForm::tr("Many, rush, extras"));
    form.line("forMany", PriceForm::tr("Many in one order cost less"), forManyText(prices))
        ->setPlaceholder(PriceForm::tr("e.g. 12: 5 %; 24: 10 %"));
    form.pair();
    form.number("rushWithin", PriceForm::tr("A rush is a day within"), PriceForm::tr("days"),
                QString::number(prices.rushWithin.count()));
    form.number("rushMore", PriceForm::tr("It costs more by"), QStringLiteral("%"),
                percentWords(prices.rushMore));
    form.longLine("extras", PriceForm::tr("Usual extras, semicolons between"), extrasText(settings))
        ->setPlaceholder(PriceForm::tr("e.g. Gift wrap: 2.50; By post: 4.00"));
    for (const char* name : {"forMany", "extras"})
        form.optional(name);
    form.number("quotationFor", PriceForm::tr("A quotation is valid for"), PriceForm::tr("days"),
                QString::number(prices.quotationFor.count()));
    addTax(form, prices);
}

void readBillRules(Form& form, ShopSettings& settings) {
    PriceRules& prices = settings.prices;
    readForMany(form, prices);
    prices.rushWithin = Days{form.whole("rushWithin", 0, 365)};
    prices.rushMore = readPercent(form, "rushMore");
    readExtras(form, settings);
    prices.quotationFor = Days{form.whole("quotationFor", 1, 365)};
    prices.tax.kind = static_cast<TaxKind>(form.chosen("taxKind"));
    prices.tax.rate = readPercent(form, "taxRate");
    prices.tax.by = static_cast<TaxedBy>(form.chosen("taxedBy"));
    prices.tax.rounding = static_cast<Rounding>(form.chosen("taxRounding"));
    prices.taxName = plain(form.text("taxName"));
    prices.taxNumber = plain(form.text("taxNumber"));
}

void addPriceList(Form& form, const ShopFacts& facts) {
    const ShopSettings& settings = facts.settings;
    form.section(PriceForm::tr("Price list"));
    form.turn("byList", PriceForm::tr("Prices are those of the list"), settings.prices.by == PricedBy::List);
    form.note(PriceForm::tr("What is not on the list is priced by its cost. The fair table shows what it "
                            "costs the shop either way."));
    form.line("decalPrices", PriceForm::tr("Decals, by the longer side in mm"), decalPricesText(settings))
        ->setPlaceholder(PriceForm::tr("e.g. 100: 2.00; 300: 4.50"));
    form.optional("decalPrices");
    for (const BlankStyle* style : pricedStyles(facts)) {
        const auto listed = settings.prices.stylePrices.find(style->id);
        form.line(priceField(style->id), breakable(words(style->name)),
                  listed == settings.prices.stylePrices.end() ? QString()
                                                              : moneyBare(listed->second, settings.currency))
            ->setPlaceholder(PriceForm::tr("by its cost"));
        form.optional(priceField(style->id));
    }
}

void readPriceList(Form& form, const ShopFacts& facts, ShopSettings& settings) {
    if (form.isOn("byList"))
        settings.prices.by = PricedBy::List;
    else if (settings.prices.by == PricedBy::List)
        settings.prices.by = PricedBy::Margin;
    readDecalPrices(form, settings);
    settings.prices.stylePrices.clear();
    for (const BlankStyle* style : pricedStyles(facts))
        if (const std::string name = priceField(style->id); !form.text(name).trimmed().isEmpty())
            settings.prices.stylePrices[style->id] = form.money(name, settings.currency);
}

} // namespace holdfast::app
