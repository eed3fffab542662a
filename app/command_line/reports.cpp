// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/reports.h"

#include "app/desk/formats.h"
#include "app/desk/left_out_words.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace holdfast::app {

namespace {

Report reportNamed(ReportName name, const ReckonedShop& shop, const ShopFigures& figures) {
    switch (name) {
    case ReportName::Walk:
        return walkReport(shop);
    case ReportName::UseFirst:
        return useFirstReport(shop);
    case ReportName::Holds:
        return holdsReport(shop);
    case ReportName::Blanks:
        return blanksReport(shop);
    case ReportName::Promise:
        return promiseReport(shop);
    case ReportName::Cut:
        return cutReport(shop);
    case ReportName::Buy:
        return buyReport(shop, figures);
    case ReportName::Figures:
        return figuresReport(shop, figures);
    }
    return {};
}

} // namespace

Report reportOf(ReportName name, const ReckonedShop& shop, const ShopFigures& figures) {
    Report report = reportNamed(name, shop, figures);
    const auto& unread = needsFigures(name) ? figures.unread : shop.facts.unread;
    if (unread.empty())
        return report;
    QJsonArray leftOut;
    report.text += QCoreApplication::translate("Report", "\nLeft out: %1\n").arg(leftOutWords(unread.size()));
    for (const UnreadRow& row : unread) {
        report.text +=
            QStringLiteral("  %1: %2 %3\n").arg(words(row.what), words(row.why), words(row.leftOut));
        leftOut.append(QJsonObject{{QStringLiteral("what"), words(row.what)},
                                   {QStringLiteral("why"), words(row.why)},
                                   {QStringLiteral("then"), words(row.leftOut)}});
    }
    report.json.insert(QStringLiteral("leftOut"), leftOut);
    return report;
}

QJsonObject reportHead(const char* name, const ReckonedShop& shop) {
    return {{QStringLiteral("report"), QLatin1String(name)},
            {QStringLiteral("shop"), words(shop.facts.settings.shopName)},
            {QStringLiteral("on"), words(isoDate(shop.now.today()))},
            {QStringLiteral("at"), localJson(shop.now.local())}};
}

QString reportTitle(const QString& title, const ReckonedShop& shop) {
    return QStringLiteral("%1 · %2 · %3, %4\n\n")
        .arg(title, words(shop.facts.settings.shopName), longDay(shop.now.today()), clock(shop.now.local()));
}

QString garmentWords(const ReckonedShop& shop, const Garment& garment) {
    const BlankStyle& style = shop.facts.styleOf(garment);
    const Colour* colour = style.colour(garment.colour);
    return QStringLiteral("%1, %2, %3")
        .arg(words(style.name), words(garment.size),
             colour != nullptr ? words(colour->name) : QStringLiteral("–"));
}

QJsonObject garmentJson(const ReckonedShop& shop, const Garment& garment) {
    const Order& order = shop.facts.orderOf(garment);
    const BlankStyle& style = shop.facts.styleOf(garment);
    const Colour* colour = style.colour(garment.colour);
    const Customer* customer = shop.facts.customers.find(order.customer);
    return {{QStringLiteral("garment"), words(shop.facts.labelOf(garment))},
            {QStringLiteral("order"), static_cast<qint64>(order.number)},
            {QStringLiteral("customer"), customer != nullptr ? words(customer->name) : QString()},
            {QStringLiteral("style"), words(style.name)},
            {QStringLiteral("size"), words(garment.size)},
            {QStringLiteral("colour"), colour != nullptr ? words(colour->name) : QString()},
            {QStringLiteral("promised"), localJson(order.promised)}};
}

QString localJson(LocalTime time) {
    return words(isoLocalMinute(time));
}

QString localJson(const ReckonedShop& shop, Instant instant) {
    return localJson(shop.now.toLocal(instant));
}

QString whenWords(LocalTime time, LocalDate today) {
    return QStringLiteral("%1 %2").arg(dayNear(dateOf(time), today), clock(time));
}

} // namespace holdfast::app
