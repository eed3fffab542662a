// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/takings.h"

#include <string>

namespace holdfast {

namespace {

using std::chrono::year_month;

year_month monthOf(LocalDate day) {
    const std::chrono::year_month_day date{day};
    return {date.year(), date.month()};
}

int quarterOf(year_month month) {
    return (static_cast<int>(static_cast<unsigned>(month.month())) - 1) / 3 + 1;
}

int monthsOf(TakingsSpan span) {
    switch (span) {
    case TakingsSpan::Month:
        return 1;
    case TakingsSpan::Quarter:
        return 3;
    case TakingsSpan::Year:
        break;
    }
    return 12;
}

year_month firstMonthOf(TakingsSpan span, year_month month) {
    const auto at = (static_cast<int>(static_cast<unsigned>(month.month())) - 1) % monthsOf(span);
    return month - std::chrono::months{at};
}

constexpr PaidHow kEveryWay[] = {PaidHow::Cash, PaidHow::Card, PaidHow::Transfer};

bool hasAny(const TakingsByMonth& months, std::chrono::year year) {
    const auto first = months.lower_bound({year, std::chrono::January});
    return first != months.end() && first->first.year() == year;
}

// Puts a line of what was added up after the months it is of.
class SummedSpan {
public:
    explicit SummedSpan(TakingsSpan span) { m_line.span = span; }

    void add(year_month month, const Takings& takings) {
        m_line.from = firstMonthOf(m_line.span, month);
        m_line.takings += takings;
    }
    void endInto(std::vector<TakingsLine>& lines) {
        lines.push_back(m_line);
        m_line.takings = {};
    }

private:
    TakingsLine m_line;
};

} // namespace

Money TaxInPayments::of(Money amount) {
    m_paid += amount;
    const Money before = m_tax;
    if (m_rule.kind != TaxKind::None)
        m_tax = divided(m_paid, m_rule.rate.hundredths, kWholePercentage.hundredths + m_rule.rate.hundredths,
                        m_rule.rounding);
    return m_tax - before;
}

Takings& Takings::operator+=(const Takings& more) {
    money += more.money;
    tax += more.tax;
    invoices += more.invoices;
    invoiced += more.invoiced;
    invoicedTax += more.invoicedTax;
    creditNotes += more.creditNotes;
    credited += more.credited;
    creditedTax += more.creditedTax;
    return *this;
}

void Takings::add(const MoneyMoved& moved) {
    money.add(moved.how, moved.kind, moved.amount);
    tax += moved.tax;
}

void Takings::add(const InvoiceMade& made) {
    if (made.kind == InvoiceKind::Invoice) {
        ++invoices;
        invoiced += made.total;
        invoicedTax += made.tax;
    } else {
        ++creditNotes;
        credited += made.total;
        creditedTax += made.tax;
    }
}

Money Takings::received() const {
    Money sum;
    for (const PaidHow how : kEveryWay)
        sum += money.in(how);
    return sum;
}

Money Takings::paidBack() const {
    Money sum;
    for (const PaidHow how : kEveryWay)
        sum += money.out(how);
    return sum;
}

TakingsByMonth takingsByMonth(std::span<const MoneyMoved> moved, std::span<const InvoiceMade> made) {
    TakingsByMonth months;
    for (const MoneyMoved& each : moved)
        months[monthOf(each.on)].add(each);
    for (const InvoiceMade& each : made)
        months[monthOf(each.on)].add(each);
    return months;
}

LocalDate TakingsLine::firstDay() const {
    return LocalDate{from / std::chrono::day{1}};
}

LocalDate TakingsLine::lastDay() const {
    return LocalDate{(from + std::chrono::months{monthsOf(span) - 1}) / std::chrono::last};
}

int TakingsLine::quarter() const {
    return quarterOf(from);
}

std::string TakingsLine::label() const {
    const std::string year = isoDate(firstDay()).substr(0, 4);
    switch (span) {
    case TakingsSpan::Month:
        return isoDate(firstDay()).substr(0, 7);
    case TakingsSpan::Quarter:
        return year + "-Q" + std::to_string(quarter());
    case TakingsSpan::Year:
        break;
    }
    return year;
}

std::vector<TakingsLine> takingsLines(const TakingsByMonth& months) {
    std::vector<TakingsLine> lines;
    if (months.empty())
        return lines;
    SummedSpan quarter{TakingsSpan::Quarter};
    SummedSpan year{TakingsSpan::Year};
    const year_month last = months.rbegin()->first;
    for (year_month month = months.begin()->first; month <= last; month += std::chrono::months{1}) {
        if (!hasAny(months, month.year()))
            continue;
        const auto found = months.find(month);
        const Takings takings = found == months.end() ? Takings{} : found->second;
        lines.push_back({TakingsSpan::Month, month, takings});
        quarter.add(month, takings);
        year.add(month, takings);
        const bool isLast = month == last;
        const year_month next = month + std::chrono::months{1};
        if (isLast || quarterOf(next) != quarterOf(month))
            quarter.endInto(lines);
        if (isLast || next.year() != month.year())
            year.endInto(lines);
    }
    return lines;
}

} // namespace holdfast
