// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The garment in hand as it lies on the platen: its outline in its cloth, the decals of the side being worked
// at true scale with their measures, and the pillow where one goes under.

#include "core/shop/reckoned_shop.h"

#include <QWidget>

#include <memory>

namespace holdfast::app {

class GarmentSheet : public QWidget {
    Q_OBJECT

public:
    explicit GarmentSheet(QWidget* parent = nullptr);

    // `at` is the step under way, or the first to come.
    void show(std::shared_ptr<const ReckonedShop> shop, GarmentId garment, std::size_t at);
    void clear();

    QSize sizeHint() const override { return {272, 344}; }
    QSize minimumSizeHint() const override { return {200, 120}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString caption() const;

    std::shared_ptr<const ReckonedShop> m_shop;
    GarmentId m_garment;
    std::size_t m_at = 0;
};

} // namespace holdfast::app
