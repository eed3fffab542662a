// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the figures are reckoned from, read on a thread of its own by a connection of its own: years of orders
// take longer to read than a hand waits. A shop in memory is read at once.

#include "core/quality/shop_figures.h"
#include "db/journal/shop.h"

#include <QObject>

#include <atomic>
#include <memory>
#include <optional>
#include <thread>

namespace holdfast::app {

class FiguresBeside : public QObject {
    Q_OBJECT

public:
    explicit FiguresBeside(QObject* parent = nullptr)
        : QObject(parent) {}
    ~FiguresBeside() override; // stops what is being read, and waits

    // Of the last so many days, or of all there are. What is being read then is stopped, and
    // what was asked last comes next.
    void begin(db::Shop& shop, std::optional<Days> last, const Now& now);

signals:
    void ended(const holdfast::ShopFigures& figures);
    void failed(const QString& reason);

private:
    struct Wanted {
        db::Shop* shop;
        std::optional<Days> last;
        Now now;
    };
    void end(const Result<ShopFigures>& read);

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    std::optional<Wanted> m_next;
};

} // namespace holdfast::app
