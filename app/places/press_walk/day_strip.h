// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day as a strip: platens, hands and cooling rack on one time axis, from now to the plan's end, with the
// closing hour; and in words which garments will be late, or come after closing, if the plan is kept.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QStringList>
#include <QWidget>

#include <memory>
#include <set>

namespace holdfast::app {

class DayStrip : public QWidget {
    Q_OBJECT

public:
    explicit DayStrip(QWidget* parent = nullptr);

    void show(std::shared_ptr<const ReckonedShop> shop, const Walk& walk);
    // What it says below: what will be late, and by how much; then what is promised and is aside. Empty
    // where nothing is late.
    QString saying() const { return m_late.join(QLatin1Char(' ')); }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {kLeastWidth, sizeHint().height()}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Lane {
        QString name;
        Resource resource = Resource::Platen;
        std::optional<PressId> press;
    };
    static constexpr int kLeastWidth = 400;

    QStringList lines() const; // of what it says, broken at its width
    int wordsHeight() const;
    qreal placeOf(Instant when, const QRectF& axis) const;
    void paintAxis(QPainter& painter, const QRectF& axis) const;
    void paintLane(QPainter& painter, const Lane& lane, const QRectF& box) const;

    std::shared_ptr<const ReckonedShop> m_shop;
    std::vector<Lane> m_lanes;
    Instant m_begins;
    Instant m_ends;
    QStringList m_late; // a sentence or two each
    std::set<GarmentId> m_lateGarments;
};

} // namespace holdfast::app
