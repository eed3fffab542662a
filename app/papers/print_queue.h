// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The printers of this machine, as its print service (CUPS) names them, and what is sent to them. Each call
// asks the service over IPP and may take seconds: not for the interface thread.

#include "core/trade/result.h"

#include <QByteArray>
#include <QSizeF>
#include <QString>

#include <vector>

namespace holdfast::app {

struct PrintPage {
    QString media; // the service's name of it
    QSizeF size;   // mm
};

struct PrintQueue {
    QString name;
    bool isUsual = false; // the service's or the person's default
    bool takesJobs = true;
    QString trouble;              // "is paused", "is out of paper": what is sent waits; empty: it prints
    PrintPage page;               // what is in it
    std::vector<PrintPage> pages; // all that it can be asked for
};

// In the order of their names; none where no print service runs.
std::vector<PrintQueue> printQueues();

// A PDF whose pages all are of this size. An error says what the print service answered.
Result<Done> sendToQueue(const PrintQueue& queue, const PrintPage& page, const QString& title,
                         const QByteArray& pdf);

} // namespace holdfast::app
