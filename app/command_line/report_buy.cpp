// SPDX-License-Identifier: GPL-3.0-or-later
// report buy: what to buy now, by supplier, and why.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/buy_words.h"
#include "app/desk/formats.h"
#include "core/csv/csv.h"
#include "core/stock/what_to_buy.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <cmath>

namespace holdfast::app {

namespace {

class BuyReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BuyReport)

public:
    BuyReport(const ReckonedShop& shop, const ShopFigures& figures)
        : m_shop(shop)
        , m_what(whatToBuy(shop, figures.blankUse, figures.nextFair, figures.bring)) {}

    QString text() const {
        QString whole = reportTitle(tr("To buy"), m_shop);
        if (!m_what.isAnyBought())
            whole += tr("Nothing is to be bought now, as far as its use is known.") + QLatin1Char('\n');
        else
            whole +=
                tr("%1, for about %2. An estimate.")
                    .arg(BuyWords::amounts(m_what), money(m_what.cost(), m_shop.facts.settings.currency)) +
                QLatin1Char('\n');
        const std::string* last = nullptr;
        std::vector<const ToBuy*> ofSupplier;
        for (const ToBuy& line : m_what.lines) {
            if (last && *last != line.supplier)
                whole += tableOf(ofSupplier);
            last = &line.supplier;
            ofSupplier.push_back(&line);
        }
        return whole + tableOf(ofSupplier);
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("buy", m_shop);
        QJsonArray lines;
        for (const ToBuy& line : m_what.lines)
            lines.append(jsonOf(line));
        whole.insert(QStringLiteral("runOutPercent"), m_shop.facts.settings.runOutPercent);
        whole.insert(QStringLiteral("lines"), lines);
        whole.insert(QStringLiteral("costMinor"), static_cast<qint64>(m_what.cost().minor));
        return whole;
    }

    // What is bought; the headings are a format and stay English.
    std::string csv() const {
        CsvLine row;
        std::string file;
        for (const char* heading : {"Supplier", "To buy", "Unit", "Buy", "Left", "Missing",
                                    "Likely used from", "Likely used to", "Buy at", "Cost", "Why"})
            row.plain(heading);
        file += row.end();
        for (const ToBuy& line : m_what.lines)
            if (line.buy > 0)
                file += csvOf(row, line);
        return file;
    }

private:
    // Empties the list.
    QString tableOf(std::vector<const ToBuy*>& lines) const {
        if (lines.empty())
            return {};
        using Side = TextTable::Side;
        TextTable table({{BuyWords::supplier(lines.front()->supplier)},
                         {tr("Left"), Side::Right},
                         {tr("Missing"), Side::Right},
                         {tr("Likely used"), Side::Right},
                         {tr("Buy at"), Side::Right},
                         {tr("Buy"), Side::Right}});
        const auto shown = [](const ToBuy& line, std::int64_t amount) {
            return amount == 0 ? QStringLiteral("·") : BuyWords::amount(line, amount);
        };
        for (const ToBuy* line : lines) {
            table.add({words(line->name), shown(*line, line->there), shown(*line, line->promised),
                       BuyWords::useRange(*line), shown(*line, line->reorderPoint), shown(*line, line->buy)});
            if (const QString why = BuyWords::reason(*line, m_what.fair); !why.isEmpty())
                table.addNote(why);
        }
        lines.clear();
        return QLatin1Char('\n') + table.text();
    }

    static QJsonObject jsonOf(const ToBuy& line) {
        const auto number = [](std::int64_t amount) { return static_cast<qint64>(amount); };
        const QString unit = line.isFilm() ? QStringLiteral("mm") : QStringLiteral("blanks");
        QJsonObject object{{QStringLiteral("name"), words(line.name)},
                           {QStringLiteral("supplier"), words(line.supplier)},
                           {QStringLiteral("unit"), unit},
                           {QStringLiteral("left"), number(line.there)},
                           {QStringLiteral("missing"), number(line.promised)},
                           {QStringLiteral("weeksKnown"), number(line.weeks)},
                           {QStringLiteral("isUseKnown"), line.isUseKnown()},
                           {QStringLiteral("leadDays"), number(line.leadTime.count())},
                           {QStringLiteral("buy"), number(line.buy)},
                           {QStringLiteral("costMinor"), number(line.cost.minor)},
                           {QStringLiteral("why"), words(std::string{codeOf(line.why)})}};
        if (line.isUseKnown()) {
            object.insert(QStringLiteral("expectedUse"), std::round(line.use * 10) / 10);
            object.insert(QStringLiteral("low"), number(std::llround(line.useLow)));
            object.insert(QStringLiteral("high"), number(std::llround(line.useHigh)));
            object.insert(QStringLiteral("reorderPoint"), number(line.reorderPoint));
        }
        return object;
    }

    static std::string_view codeOf(WhyBuy why) {
        switch (why) {
        case WhyBuy::Enough:
            return "enough";
        case WhyBuy::Promised:
            return "promised";
        case WhyBuy::Fair:
            return "fair";
        case WhyBuy::RunsLow:
            return "runs-low";
        }
        return {};
    }

    // Film in metres, as it is bought.
    std::string csvOf(CsvLine& row, const ToBuy& line) const {
        const auto amount = [&](double number) {
            return valueInFile(line.isFilm() ? number / 1000 : number);
        };
        row.text(line.supplier).text(line.name).plain(line.isFilm() ? "m" : "blanks");
        row.plain(amount(static_cast<double>(line.buy)))
            .plain(amount(static_cast<double>(line.there)))
            .plain(amount(static_cast<double>(line.promised)));
        if (line.isUseKnown())
            row.plain(amount(line.useLow))
                .plain(amount(line.useHigh))
                .plain(amount(static_cast<double>(line.reorderPoint)));
        else
            row.empty().empty().empty();
        row.plain(plainAmount(line.cost, m_shop.facts.settings.currency)).plain(codeOf(line.why));
        return row.end();
    }

    // To a tenth; whole numbers without.
    static std::string valueInFile(double number) {
        const auto tenths = std::llround(number * 10);
        std::string text = std::to_string(tenths / 10);
        if (tenths % 10 != 0)
            text += "." + std::to_string(std::llabs(tenths % 10));
        return text;
    }

    const ReckonedShop& m_shop;
    WhatToBuy m_what;
};

} // namespace

Report buyReport(const ReckonedShop& shop, const ShopFigures& figures) {
    const BuyReport report{shop, figures};
    return {report.text(), report.json(), report.csv()};
}

} // namespace holdfast::app
