// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/orders_file_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct OrdersFileWords {
    Q_DECLARE_TR_FUNCTIONS(OrdersFileWords)
};

constexpr qsizetype kLongestFirst = 24;

Option optionOf(const OrderFileRead& read, const FiledOrder& order) {
    const QString garments =
        OrdersFileWords::tr("%n garment|%n garments", nullptr, howMany(order.draft.garments.size()));
    const LocalDate promised = dateOf(order.draft.promised);
    const QString second = order.wanted && order.wanted->answer != WantedDay::Answer::Kept
                               ? OrdersFileWords::tr("%1, promised %2; asked for %3, which cannot be kept")
                                     .arg(garments, date(promised), date(order.wanted->day))
                               : OrdersFileWords::tr("%1, promised %2").arg(garments, date(promised));
    const bool isLate = order.wanted && order.wanted->answer != WantedDay::Answer::Kept;
    return {.text =
                OrdersFileWords::tr("%1 %2, %3")
                    .arg(words(read.naming.shop), words(order.reference), words(order.draft.customerName)),
            .second = second,
            .tone = isLate ? Tone::Caution : Tone::Plain};
}

} // namespace

QString headingWords(const std::string& heading, const std::string& first) {
    if (first.empty())
        return words(heading);
    QString value = words(first).simplified();
    if (value.size() > kLongestFirst)
        value = value.left(kLongestFirst) + u'…';
    return OrdersFileWords::tr("%1 (%2)").arg(words(heading), value);
}

QVector<Option> orderOptions(const OrderFileRead& read) {
    QVector<Option> options;
    for (const FiledLine& line : read.lines)
        if (!line.wrong.empty())
            options.append({.text = words(line.reference), .second = words(line.wrong), .tone = Tone::Held});
    for (const FiledLine& line : read.lines)
        if (line.wrong.empty() && !line.caution.empty())
            options.append(
                {.text = words(line.reference), .second = words(line.caution), .tone = Tone::Caution});
    for (const FiledOrder& order : read.orders)
        options.append(optionOf(read, order));
    return options;
}

QString foundWords(const OrderFileRead& read) {
    if (const std::size_t wrong = read.wrongLines(); wrong > 0)
        return OrdersFileWords::tr(
            "%n line is wrong, so no order is taken.|%n lines are wrong, so no order is taken.", nullptr,
            howMany(wrong));
    if (read.orders.empty())
        return OrdersFileWords::tr("There is no new order in this file.");
    return OrdersFileWords::tr("%n order can be taken.|%n orders can be taken.", nullptr,
                               howMany(read.orders.size()));
}

QString knownWords(const OrderFileRead& read) {
    const std::size_t known = read.knownOrders();
    return known == 0 ? QString()
                      : OrdersFileWords::tr("%n was taken before and is left out.|"
                                            "%n were taken before and are left out.",
                                            nullptr, howMany(known));
}

} // namespace holdfast::app
