// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A paper that the shop prints: one page of it, how large it is and how it is drawn. What it says is put
// together when it is made; drawing it needs no shop and may be done on any thread.

#include "app/papers/paper_ink.h"

#include <QSizeF>
#include <QString>

#include <functional>
#include <vector>

namespace holdfast::app {

struct Paper {
    QString name; // of its file, without an ending: "claim-ticket-426"
    QSizeF size;  // mm
    std::function<void(PaperInk&)> draw;
};

} // namespace holdfast::app
