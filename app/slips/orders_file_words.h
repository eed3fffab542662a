// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said of a web shop's file before its orders are taken.

#include "app/slips/option_list.h"
#include "core/orders/order_file.h"

#include <QString>
#include <QVector>

#include <string>

namespace holdfast::app {

// A heading with the first value under it.
QString headingWords(const std::string& heading, const std::string& first);

// What is wrong, line by line, first; then what somebody should look at; then each order as it would be
// taken.
QVector<Option> orderOptions(const OrderFileRead& read);

QString foundWords(const OrderFileRead& read);
QString knownWords(const OrderFileRead& read); // of orders that were taken before; empty: none

} // namespace holdfast::app
