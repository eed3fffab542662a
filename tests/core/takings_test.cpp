// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_sum.h"
#include "core/orders/takings.h"

#include <gtest/gtest.h>

#include <random>

namespace holdfast {
namespace {

using std::chrono::year_month;

const TaxRule kTwentyIncluded{TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};

std::vector<std::string> labelsOf(const std::vector<TakingsLine>& lines) {
    std::vector<std::string> labels;
    for (const TakingsLine& line : lines)
        labels.push_back(line.label());
    return labels;
}

// By hand. An order of 120.00 with 20 % in it: 60.00 by card in September and the rest in cash in October, of
// which 12.00 are paid back in November. The tax in a sixth of each (the VAT fraction of 20 % is 1/6; HM
// Revenue and Customs, Notice 700, from memory): 10.00, 10.00 and 2.00. Its invoice is of October, and a
// credit note of 12.00 of November.
TEST(Takings, AWorkedExample) {
    TaxInPayments tax{kTwentyIncluded};
    std::vector<MoneyMoved> moved{
        {localDate(2026, 9, 30), PaidHow::Card, MoneyKind::Deposit, Money{60'00}, {}},
        {localDate(2026, 10, 1), PaidHow::Cash, MoneyKind::Payment, Money{60'00}, {}},
        {localDate(2026, 11, 2), PaidHow::Cash, MoneyKind::Refund, Money{-12'00}, {}}};
    for (MoneyMoved& each : moved)
        each.tax = tax.of(each.amount);
    const std::vector<InvoiceMade> made{
        {localDate(2026, 10, 1), InvoiceKind::Invoice, Money{120'00}, Money{20'00}},
        {localDate(2026, 11, 2), InvoiceKind::CreditNote, Money{12'00}, Money{2'00}}};
    const auto lines = takingsLines(takingsByMonth(moved, made));
    ASSERT_EQ(labelsOf(lines),
              (std::vector<std::string>{"2026-09", "2026-Q3", "2026-10", "2026-11", "2026-Q4", "2026"}));
    EXPECT_EQ(lines[0].takings.money.of(PaidHow::Card), Money{60'00});
    EXPECT_EQ(lines[0].takings.tax, Money{10'00});
    EXPECT_EQ(lines[0].takings.invoices, 0);
    EXPECT_EQ(lines[1].takings, lines[0].takings) << "the only month of its quarter";
    const Takings& quarter = lines[4].takings;
    EXPECT_EQ(quarter.received(), Money{60'00});
    EXPECT_EQ(quarter.paidBack(), Money{12'00});
    EXPECT_EQ(quarter.tax, Money{8'00});
    EXPECT_EQ(quarter.money.of(PaidHow::Cash), Money{48'00});
    EXPECT_EQ(quarter.billed(), Money{108'00});
    EXPECT_EQ(quarter.billedTax(), Money{18'00});
    EXPECT_EQ(quarter.billedNet(), Money{90'00});
    EXPECT_EQ(quarter.invoices, 1);
    EXPECT_EQ(quarter.creditNotes, 1);
    EXPECT_EQ(lines[4].firstDay(), localDate(2026, 10, 1));
    EXPECT_EQ(lines[4].lastDay(), localDate(2026, 12, 31)) << "a quarter is whole";
    EXPECT_EQ(lines[5].takings.received(), Money{120'00});
    EXPECT_EQ(lines[5].takings.tax, Money{18'00});
}

TEST(Takings, NothingIsNothing) {
    EXPECT_TRUE(takingsLines({}).empty());
}

TEST(Takings, MonthsWithNothingAreThereButNotYears) {
    const TakingsByMonth months{{year_month{std::chrono::year{2021}, std::chrono::November}, {}},
                                {year_month{std::chrono::year{2023}, std::chrono::February}, {}}};
    EXPECT_EQ(labelsOf(takingsLines(months)),
              (std::vector<std::string>{"2021-11", "2021-12", "2021-Q4", "2021", "2023-01", "2023-02",
                                        "2023-Q1", "2023"}));
}

// ISO 8601 counts days of a month by the Gregorian calendar: 29 in February of 2028, 28 in 2026.
TEST(Takings, AMonthEndsWithItsLastDay) {
    const auto lastOf = [](LocalDate day) {
        return takingsLines(takingsByMonth(std::vector<MoneyMoved>{{day, {}, {}, Money{1}, {}}}, {}))[0]
            .lastDay();
    };
    EXPECT_EQ(lastOf(localDate(2028, 2, 1)), localDate(2028, 2, 29));
    EXPECT_EQ(lastOf(localDate(2026, 2, 28)), localDate(2026, 2, 28));
    EXPECT_EQ(lastOf(localDate(2026, 12, 31)), localDate(2026, 12, 31));
}

// However an order is paid, the tax in its payments is in the end that of its bill; nothing is paid without
// tax, and nothing is left when all is paid back.
TEST(Takings, TaxInPaymentsAddsUpToThatOfTheBill) {
    std::mt19937 random{20261201};
    const auto from = [&](std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(random);
    };
    for (int round = 0; round < 2000; ++round) {
        const TaxRule rule{round % 2 == 0 ? TaxKind::Included : TaxKind::Added,
                           {from(0, 30'00)},
                           TaxedBy::Total,
                           Rounding::HalfUp};
        const std::vector<Money> prices{Money{from(1, 90'00)}, Money{from(1, 90'00)}};
        const OrderSum sum = sumOf(prices, {}, rule);
        TaxInPayments tax{rule};
        Money left = sum.total;
        Money paidTax;
        while (left > Money{}) {
            const Money part{from(1, left.minor)};
            paidTax += tax.of(part);
            left = left - part;
        }
        EXPECT_EQ(paidTax, sum.tax) << sum.total.minor << " at " << rule.rate.hundredths;
        EXPECT_EQ(tax.of(-sum.total), -sum.tax);
    }
    TaxInPayments none{TaxRule{}};
    EXPECT_EQ(none.of(Money{100'00}), Money{});
}

// Whatever moved: months add up to quarters, quarters to years, and years to all of it.
TEST(Takings, MonthsAddUpToQuartersAndYears) {
    std::mt19937 random{20261202};
    const auto from = [&](std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(random);
    };
    for (int round = 0; round < 50; ++round) {
        std::vector<MoneyMoved> moved;
        std::vector<InvoiceMade> made;
        Takings all;
        const auto day = [&] { return localDate(2024, 1, 1) + Days{from(0, 1200)}; };
        for (int count = 0; count < 200; ++count) {
            const auto kind = static_cast<MoneyKind>(from(0, 2));
            const std::int64_t minor = from(1, 500'00);
            moved.push_back({day(), static_cast<PaidHow>(from(0, 2)), kind,
                             Money{kind == MoneyKind::Refund ? -minor : minor}, Money{from(-900, 900)}});
            all.add(moved.back());
            made.push_back({day(), static_cast<InvoiceKind>(from(0, 1)), Money{minor}, Money{minor / 6}});
            all.add(made.back());
        }
        Takings months, quarters, years, ofQuarter, ofYear;
        for (const TakingsLine& line : takingsLines(takingsByMonth(moved, made))) {
            if (line.span == TakingsSpan::Month) {
                months += line.takings;
                ofQuarter += line.takings;
                ofYear += line.takings;
            } else if (line.span == TakingsSpan::Quarter) {
                EXPECT_EQ(line.takings, ofQuarter) << line.label();
                quarters += line.takings;
                ofQuarter = {};
            } else {
                EXPECT_EQ(line.takings, ofYear) << line.label();
                years += line.takings;
                ofYear = {};
            }
        }
        EXPECT_EQ(months, all);
        EXPECT_EQ(quarters, all);
        EXPECT_EQ(years, all);
        EXPECT_EQ(all.received() - all.paidBack(), all.money.of(PaidHow::Cash) + all.money.of(PaidHow::Card) +
                                                       all.money.of(PaidHow::Transfer));
        EXPECT_EQ(all.billedNet() + all.billedTax(), all.billed());
    }
}

} // namespace
} // namespace holdfast
