// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the figures are reckoned from, read beside the window by a connection of its own: years of orders take
// longer to read than a hand waits. A shop in memory is read at once.

#include "app/desk/beside.h"
#include "core/quality/shop_figures.h"
#include "db/journal/shop.h"

#include <QObject>

#include <functional>
#include <optional>

namespace holdfast::app {

// Reads them on any thread, by a connection of its own; those of a shop in memory are read at once.
std::function<Result<ShopFigures>()> figuresReader(db::Shop& shop, std::optional<Days> last, const Now& now);

class FiguresBeside : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    // Of the last so many days, or of all there are. What is being read then is dropped.
    void begin(db::Shop& shop, std::optional<Days> last, const Now& now);

signals:
    void ended(const holdfast::ShopFigures& figures);
    void failed(const QString& reason);

private:
    void end(const Result<ShopFigures>& read);

    Beside<Result<ShopFigures>> m_beside;
};

} // namespace holdfast::app
