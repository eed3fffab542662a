// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/today_tools.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "db/tables/order_book.h"

#include <QPainter>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kGap = 22;

} // namespace

TodayTools::TodayTools(ShopDesk& desk, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("takenToday"));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(&desk, &ShopDesk::changed, this, &TodayTools::reckon);
    connect(&desk, &ShopDesk::minutePassed, this, &TodayTools::reckon);
    m_tick.setInterval(1000);
    connect(&m_tick, &QTimer::timeout, this, [this] {
        if (clock(m_desk.now().local()) != m_clock)
            reckon();
    });
    m_tick.start();
    reckon();
}

void TodayTools::reckon() {
    const Now now = m_desk.now();
    const LocalDate today = now.today();
    const auto takings = m_desk.file().read([&](db::Connection& connection) {
        return db::takingsBetween(connection, now.toInstant(today), now.toInstant(today + Days{1}));
    });
    const db::Takings taken = takings.ok() ? *takings : db::Takings{};
    m_taken = tr("Taken today %1").arg(taken.orders);
    m_money = money(taken.money, m_desk.currency());
    m_clock = clock(now.local());
    setAccessibleName(QStringList{m_taken, m_money, m_clock}.join(QStringLiteral(", ")));
    updateGeometry();
    update();
}

QSize TodayTools::sizeHint() const {
    const double wide = widthOf(m_taken, Type::BodyStrong) + kSpace16 + widthOf(m_money, Type::Body) + kGap +
                        widthOf(m_clock, Type::Number);
    return {static_cast<int>(std::ceil(wide)) + 2, kTarget};
}

void TodayTools::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    paintLine(painter, box, m_taken, Type::BodyStrong, dyes.ink);
    const double left = widthOf(m_taken, Type::BodyStrong) + kSpace16;
    paintLine(painter, box.adjusted(left, 0, 0, 0), m_money, Type::Body, dyes.ink2);
    paintLine(painter, box, m_clock, Type::Number, dyes.ink, Qt::AlignRight);
}

} // namespace holdfast::app
