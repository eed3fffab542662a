// SPDX-License-Identifier: GPL-3.0-or-later
// report takings: money and invoices by month, quarter and year, for whoever does the books.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"
#include "app/desk/takings_words.h"
#include "core/csv/csv.h"
#include "core/orders/takings.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace holdfast::app {

namespace {

class TakingsReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::TakingsReport)

public:
    TakingsReport(const ReckonedShop& shop, const ShopFigures& figures)
        : m_shop(shop)
        , m_currency(shop.facts.settings.currency)
        , m_otherCurrency(figures.invoicesInOtherCurrency)
        , m_lines(takingsLines(figures.takings)) {}

    QString text() const {
        const QString title = reportTitle(tr("Takings"), m_shop);
        if (m_lines.empty())
            return title + tr("No money was taken and no invoice was made yet.") + QLatin1Char('\n');
        return title + moneyTable().text() + QLatin1Char('\n') + invoiceTable().text() + QLatin1Char('\n') +
               TakingsWords::note(m_otherCurrency) + QLatin1Char('\n');
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("takings", m_shop);
        QJsonArray lines;
        for (const TakingsLine& line : m_lines)
            lines.append(jsonOf(line));
        whole.insert(QStringLiteral("currency"), words(m_currency.code));
        whole.insert(QStringLiteral("invoicesInOtherCurrency"), static_cast<qint64>(m_otherCurrency));
        whole.insert(QStringLiteral("lines"), lines);
        return whole;
    }

    // The headings are a format and stay English.
    std::string csv() const {
        CsvLine row;
        std::string file;
        for (const char* heading :
             {"Span", "Of", "From", "To", "Currency", "Cash", "Card", "Transfer", "Received", "Paid back",
              "Tax in it", "Invoices", "Credit notes", "Net", "Tax", "Total"})
            row.plain(heading);
        file += row.end();
        for (const TakingsLine& line : m_lines)
            file += csvOf(row, line);
        return file;
    }

private:
    using Side = TextTable::Side;

    QString amount(Money money) const {
        return money == Money{} ? QStringLiteral("·") : app::money(money, m_currency);
    }

    TextTable moneyTable() const {
        TextTable table({{tr("Money")},
                         {tr("Cash"), Side::Right},
                         {tr("Card"), Side::Right},
                         {tr("Transfer"), Side::Right},
                         {tr("Received"), Side::Right},
                         {tr("Paid back"), Side::Right},
                         {tr("Tax in it"), Side::Right}});
        for (const TakingsLine& line : m_lines) {
            const Takings& takings = line.takings;
            table.add({TakingsWords::span(line), amount(takings.money.of(PaidHow::Cash)),
                       amount(takings.money.of(PaidHow::Card)), amount(takings.money.of(PaidHow::Transfer)),
                       amount(takings.received()), amount(takings.paidBack()), amount(takings.tax)});
        }
        return table;
    }

    TextTable invoiceTable() const {
        const auto count = [](std::int64_t number) {
            return number == 0 ? QStringLiteral("·") : QString::number(number);
        };
        TextTable table({{tr("Invoiced")},
                         {tr("Invoices"), Side::Right},
                         {tr("Credit notes"), Side::Right},
                         {tr("Without tax"), Side::Right},
                         {tr("Tax"), Side::Right},
                         {tr("Total"), Side::Right}});
        for (const TakingsLine& line : m_lines) {
            const Takings& takings = line.takings;
            table.add({TakingsWords::span(line), count(takings.invoices), count(takings.creditNotes),
                       amount(takings.billedNet()), amount(takings.billedTax()), amount(takings.billed())});
        }
        return table;
    }

    static std::string_view codeOf(TakingsSpan span) {
        switch (span) {
        case TakingsSpan::Month:
            return "month";
        case TakingsSpan::Quarter:
            return "quarter";
        case TakingsSpan::Year:
            break;
        }
        return "year";
    }

    static QJsonObject jsonOf(const TakingsLine& line) {
        const auto minor = [](Money amount) { return static_cast<qint64>(amount.minor); };
        const Takings& takings = line.takings;
        return {{QStringLiteral("span"), words(codeOf(line.span))},
                {QStringLiteral("of"), words(line.label())},
                {QStringLiteral("from"), words(isoDate(line.firstDay()))},
                {QStringLiteral("to"), words(isoDate(line.lastDay()))},
                {QStringLiteral("cashMinor"), minor(takings.money.of(PaidHow::Cash))},
                {QStringLiteral("cardMinor"), minor(takings.money.of(PaidHow::Card))},
                {QStringLiteral("transferMinor"), minor(takings.money.of(PaidHow::Transfer))},
                {QStringLiteral("receivedMinor"), minor(takings.received())},
                {QStringLiteral("paidBackMinor"), minor(takings.paidBack())},
                {QStringLiteral("taxInItMinor"), minor(takings.tax)},
                {QStringLiteral("invoices"), static_cast<qint64>(takings.invoices)},
                {QStringLiteral("creditNotes"), static_cast<qint64>(takings.creditNotes)},
                {QStringLiteral("netMinor"), minor(takings.billedNet())},
                {QStringLiteral("taxMinor"), minor(takings.billedTax())},
                {QStringLiteral("totalMinor"), minor(takings.billed())}};
    }

    std::string csvOf(CsvLine& row, const TakingsLine& line) const {
        const Takings& takings = line.takings;
        row.plain(codeOf(line.span)).plain(line.label());
        row.plain(isoDate(line.firstDay())).plain(isoDate(line.lastDay())).text(m_currency.code);
        for (const Money money :
             {takings.money.of(PaidHow::Cash), takings.money.of(PaidHow::Card),
              takings.money.of(PaidHow::Transfer), takings.received(), takings.paidBack(), takings.tax})
            row.plain(plainAmount(money, m_currency));
        row.plain(std::to_string(takings.invoices)).plain(std::to_string(takings.creditNotes));
        for (const Money money : {takings.billedNet(), takings.billedTax(), takings.billed()})
            row.plain(plainAmount(money, m_currency));
        return row.end();
    }

    const ReckonedShop& m_shop;
    Currency m_currency;
    std::int64_t m_otherCurrency;
    std::vector<TakingsLine> m_lines;
};

} // namespace

Report takingsReport(const ReckonedShop& shop, const ShopFigures& figures) {
    const TakingsReport report{shop, figures};
    return {report.text(), report.json(), report.csv()};
}

} // namespace holdfast::app
