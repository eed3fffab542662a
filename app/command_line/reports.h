// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The reports of the command line: what a shop looks like at a moment, as text for people or as JSON whose
// keys stay (docs/command-line.md).

#include "app/command_line/arguments.h"
#include "core/quality/shop_figures.h"
#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QJsonObject>
#include <QString>

namespace holdfast::app {

struct Report {
    QString text;
    QJsonObject json;
    std::string csv = {}; // of those that are lists to take along; empty: it has no such form
};

Report reportOf(ReportName name, const ReckonedShop& shop, const ShopFigures& figures);

// One file each.
Report walkReport(const ReckonedShop& shop);
Report useFirstReport(const ReckonedShop& shop);
Report holdsReport(const ReckonedShop& shop);
Report blanksReport(const ReckonedShop& shop);
Report promiseReport(const ReckonedShop& shop);
Report cutReport(const ReckonedShop& shop);
Report buyReport(const ReckonedShop& shop, const ShopFigures& figures);
Report figuresReport(const ReckonedShop& shop, const ShopFigures& figures);

// ── what the reports have in common ───────────────────────────────────────────────────────────────────

// "report", "shop", "on" and "at", with which every report begins.
QJsonObject reportHead(const char* name, const ReckonedShop& shop);
// The same as a line for people.
QString reportTitle(const QString& title, const ReckonedShop& shop);

QString garmentWords(const ReckonedShop& shop, const Garment& garment); // "Tee, M, Moss"
QJsonObject garmentJson(const ReckonedShop& shop, const Garment& garment);
QString localJson(LocalTime time); // "2026-11-25T15:00"
QString localJson(const ReckonedShop& shop, Instant instant);
// "today 10:40", "Thu 12 Nov 09:00"
QString whenWords(LocalTime time, LocalDate today);

} // namespace holdfast::app
