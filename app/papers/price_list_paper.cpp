// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/price_list_paper.h"

#include "app/desk/formats.h"
#include "app/papers/paper_pages.h"
#include "core/shop/price_list.h"
#include "core/trade/percentage_value.h"

#include <QCoreApplication>

#include <algorithm>
#include <cstdlib>

namespace holdfast::app {

namespace {

// Read at some 70 cm: capitals of 4 mm and more (a two-hundredth of the distance or so; common practice, no
// source).
constexpr PaperType kPriceStyle{9, QFont::DemiBold, true};
constexpr PaperType kPriceLine{6.6, QFont::Normal};
constexpr PaperType kPriceAmount{7.4, QFont::Bold};
constexpr PaperType kPriceNote{5.6, QFont::Normal};
constexpr double kBetweenPrices = 2.4;
constexpr double kBesidePrice = 6;
constexpr double kLeastPrice = 4; // of letters that are too wide otherwise

class PriceBlocks {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PriceList)

public:
    explicit PriceBlocks(const ShopFacts& facts)
        : m_settings(facts.settings)
        , m_styles(priceList(facts)) {}

    std::vector<PageBlock> blocks() {
        if (m_styles.empty())
            note(tr("There is no price yet: styles and films with a recipe come first."));
        else
            note(tr("With one decal of about this size:"));
        for (const ListedStyle& style : m_styles)
            add(style);
        addRules();
        return std::move(m_blocks);
    }

private:
    QString amount(Money money) const { return app::money(money, m_settings.currency); }

    void note(const QString& text) {
        const double height =
            static_cast<double>(brokenInto(kPageWidth, text, kPriceNote).size()) * lineStep(kPriceNote);
        m_blocks.push_back({height + kBetweenPrices,
                            [text](PaperInk& ink) { ink.lines({0, 0}, kPageWidth, text, kPriceNote); }});
    }

    // A name on as many lines as it needs, its price at the right of the first.
    void row(const QString& name, const QString& price) {
        const PaperType type = shrunkTo(kPageWidth / 2, price, kPriceAmount, kLeastPrice);
        const double room = kPageWidth - paperWidth(price, type) - kBesidePrice;
        const double height =
            static_cast<double>(brokenInto(room, name, kPriceLine).size()) * lineStep(kPriceLine);
        m_blocks.push_back({std::max(height, lineStep(kPriceAmount)) + kBetweenPrices, [=](PaperInk& ink) {
                                ink.lines({0, 0}, room, name, kPriceLine);
                                ink.line({kPageWidth, kPriceLine.millimetres}, price, type, Across::Right);
                            }});
    }

    void heading(const QString& text) {
        const QStringList lines = brokenInto(kPageWidth, text, kPriceStyle);
        m_blocks.push_back({static_cast<double>(lines.size()) * lineStep(kPriceStyle) + 5,
                            [text](PaperInk& ink) {
                                ink.rule(0, kPageWidth, 1);
                                ink.lines({0, 3}, kPageWidth, text, kPriceStyle);
                            },
                            true});
    }

    void add(const ListedStyle& style) {
        heading(words(style.name));
        for (const ListedPrice& price : style.prices)
            row(tr("%1 wide, %2").arg(millimetres(price.width), words(placementName(price.placement))),
                price.least == price.most ? amount(price.least)
                                          : tr("%1 to %2").arg(amount(price.least), amount(price.most)));
    }

    void addRules() {
        const PriceRules& rules = m_settings.prices;
        if (!rules.extras.empty())
            heading(tr("Extras"));
        for (const UsualExtra& extra : rules.extras)
            row(words(extra.words), amount(extra.amount));
        if (std::ranges::any_of(m_styles, hasSpan))
            note(tr("From and to: by the film that is chosen."));
        for (const PriceForMany& many : rules.forMany)
            note(tr("%n garment or more in one order: %1 % less.|%n garments or more in one order: %1 % "
                    "less.",
                    nullptr, howMany(many.garments))
                     .arg(percent(many.less)));
        if (rules.rushWithin.count() > 0 && rules.rushMore > Percentage{})
            note(tr("Within %1: %2 % more.").arg(dayCount(rules.rushWithin), percent(rules.rushMore)));
        if (rules.tax.kind == TaxKind::Included)
            note(tr("%1 is in the prices.").arg(words(taxWords(rules.tax, rules.taxName))));
        if (rules.tax.kind == TaxKind::Added)
            note(tr("%1 is added to the prices.").arg(words(taxWords(rules.tax, rules.taxName))));
    }

    static bool hasSpan(const ListedStyle& style) {
        return std::ranges::any_of(style.prices,
                                   [](const ListedPrice& price) { return price.least != price.most; });
    }
    static QString percent(Percentage share) {
        return valueWords(decimalOf(Percentage{std::abs(share.hundredths)}));
    }

    const ShopSettings& m_settings;
    std::vector<ListedStyle> m_styles;
    std::vector<PageBlock> m_blocks;
};

} // namespace

std::vector<Paper> priceListPapers(const ShopFacts& facts) {
    return pagesOf(QStringLiteral("price-list"), {PriceBlocks::tr("Prices"), words(facts.settings.shopName)},
                   PriceBlocks{facts}.blocks());
}

} // namespace holdfast::app
