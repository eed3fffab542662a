// SPDX-License-Identifier: GPL-3.0-or-later
// report blanks: what hangs on the rail, what of it is kept, and what is short.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <map>
#include <tuple>

namespace holdfast::app {

namespace {

// One style, size and colour.
struct RailLine {
    std::int64_t washed = 0; // and dry
    std::int64_t drying = 0;
    std::int64_t unwashed = 0; // or washed with softener: to be washed
    std::int64_t kept = 0;     // of these, for garments
    std::int64_t missing = 0;  // garments of confirmed orders for which none is kept

    std::int64_t units() const { return washed + drying + unwashed; }
};

class BlanksReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BlanksReport)

public:
    explicit BlanksReport(const ReckonedShop& shop)
        : m_shop(shop) {
        for (const BlankLot& lot : shop.facts.lots)
            if (lot.unitsLeft > 0)
                count(lot);
        for (const Garment& garment : shop.facts.garments)
            if (shop.of(garment.id).stage == Stage::ToBuy)
                ++lineOf(garment.style, garment.size, garment.colour).missing;
    }

    QString text() const {
        QString whole = reportTitle(tr("Blanks"), m_shop);
        if (m_lines.empty())
            return whole + tr("No blank hangs on the rail.") + QLatin1Char('\n');
        using Side = TextTable::Side;
        TextTable table({{tr("Style")},
                         {tr("Colour")},
                         {tr("Size")},
                         {tr("Washed"), Side::Right},
                         {tr("Drying"), Side::Right},
                         {tr("Unwashed"), Side::Right},
                         {tr("Reserved"), Side::Right},
                         {tr("Left"), Side::Right},
                         {tr("Short"), Side::Right}});
        for (const auto& [kind, line] : m_lines) {
            const auto number = [](std::int64_t count) {
                return count == 0 ? QStringLiteral("·") : QString::number(count);
            };
            table.add({styleName(kind), colourName(kind), sizeName(kind), number(line.washed),
                       number(line.drying), number(line.unwashed), number(line.kept),
                       number(line.units() - line.kept), number(line.missing)});
        }
        return whole + table.text();
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("blanks", m_shop);
        QJsonArray lines;
        for (const auto& [kind, line] : m_lines)
            lines.append(QJsonObject{{QStringLiteral("style"), styleName(kind)},
                                     {QStringLiteral("colour"), colourName(kind)},
                                     {QStringLiteral("size"), sizeName(kind)},
                                     {QStringLiteral("washed"), static_cast<qint64>(line.washed)},
                                     {QStringLiteral("drying"), static_cast<qint64>(line.drying)},
                                     {QStringLiteral("unwashed"), static_cast<qint64>(line.unwashed)},
                                     {QStringLiteral("kept"), static_cast<qint64>(line.kept)},
                                     {QStringLiteral("free"), static_cast<qint64>(line.units() - line.kept)},
                                     {QStringLiteral("short"), static_cast<qint64>(line.missing)}});
        whole.insert(QStringLiteral("blanks"), lines);
        return whole;
    }

private:
    // By style, colour and size in the order in which the style names them.
    struct Kind {
        std::string styleName;
        BlankStyleId style;
        std::size_t colourAt = 0;
        std::size_t sizeAt = 0;
        ColourId colour;
        std::string size;

        auto key() const { return std::tie(styleName, style, colourAt, colour, sizeAt, size); }
        bool operator<(const Kind& other) const { return key() < other.key(); }
    };

    RailLine& lineOf(BlankStyleId id, const std::string& size, ColourId colour) {
        const BlankStyle& style = m_shop.facts.styles.at(id);
        Kind kind{style.name, id, 0, 0, colour, size};
        kind.colourAt = static_cast<std::size_t>(std::ranges::find(style.colours, colour, &Colour::id) -
                                                 style.colours.begin());
        kind.sizeAt = static_cast<std::size_t>(std::ranges::find(style.sizes, size) - style.sizes.begin());
        return m_lines[kind];
    }

    void count(const BlankLot& lot) {
        RailLine& line = lineOf(lot.style, lot.size, lot.colour);
        const WashLoad* load = m_shop.facts.lastLoadOf(lot);
        const bool needsNoWash = !m_shop.facts.styles.at(lot.style).washedFirst();
        if (load != nullptr && !load->isDry())
            line.drying += lot.unitsLeft;
        else if (needsNoWash || (load != nullptr && !load->leftSoftener()))
            line.washed += lot.unitsLeft;
        else
            line.unwashed += lot.unitsLeft;
        line.kept += lot.unitsLeft - m_shop.facts.freeUnits(lot);
    }

    QString styleName(const Kind& kind) const { return words(kind.styleName); }
    QString sizeName(const Kind& kind) const { return words(kind.size); }
    QString colourName(const Kind& kind) const {
        const Colour* colour = m_shop.facts.styles.at(kind.style).colour(kind.colour);
        return colour != nullptr ? words(colour->name) : QString();
    }

    const ReckonedShop& m_shop;
    std::map<Kind, RailLine> m_lines;
};

} // namespace

Report blanksReport(const ReckonedShop& shop) {
    const BlanksReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
