// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/customer_list.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAccessible>
#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kRow = kStallTarget;
constexpr int kEdge = 4;

} // namespace

CustomerList::CustomerList(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("customers"));
    setAccessibleName(tr("Known customers"));
    setFocusPolicy(Qt::NoFocus);
    setMouseTracking(true);
    hide();
}

void CustomerList::show(const std::vector<Customer>& customers) {
    m_customers = customers;
    m_chosen = -1;
    setVisible(!customers.empty());
    resize(width(), sizeHint().height());
    raise();
    update();
}

QSize CustomerList::sizeHint() const {
    return {300, static_cast<int>(m_customers.size()) * kRow + 2 * kEdge};
}

bool CustomerList::takeKey(QKeyEvent* event) {
    const int last = static_cast<int>(m_customers.size()) - 1;
    switch (event->key()) {
    case Qt::Key_Down:
        choose(std::min(m_chosen + 1, last));
        return true;
    case Qt::Key_Up:
        choose(std::max(m_chosen - 1, -1));
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_chosen < 0)
            return false;
        pick(m_chosen);
        return true;
    case Qt::Key_Escape:
        hide();
        return true;
    default:
        return false;
    }
}

void CustomerList::pickFirst() {
    pick(0);
}

void CustomerList::pick(int row) {
    const Customer customer = m_customers[static_cast<std::size_t>(row)];
    hide();
    emit picked(customer);
}

void CustomerList::choose(int row) {
    m_chosen = row;
    if (row >= 0) {
        const Customer& customer = m_customers[static_cast<std::size_t>(row)];
        setAccessibleDescription(words(customer.name) + QStringLiteral(", ") + words(customer.phone));
        QAccessibleEvent described(this, QAccessible::DescriptionChanged);
        QAccessible::updateAccessibility(&described);
    }
    update();
}

int CustomerList::rowAt(QPoint at) const {
    const int row = (at.y() - kEdge) / kRow;
    return at.y() >= kEdge && row < static_cast<int>(m_customers.size()) ? row : -1;
}

void CustomerList::mouseMoveEvent(QMouseEvent* event) {
    choose(rowAt(event->position().toPoint()));
}

void CustomerList::mousePressEvent(QMouseEvent* event) {
    const int row = rowAt(event->position().toPoint());
    if (row >= 0)
        pick(row);
}

// What the pointer only passed over is not chosen by Enter.
void CustomerList::leaveEvent(QEvent*) {
    choose(-1);
}

void CustomerList::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    paintBox(painter, QRectF(rect()), kButtonRadius, dyes.card, dyes.edge, 1.2);
    for (std::size_t at = 0; at < m_customers.size(); ++at) {
        const Customer& customer = m_customers[at];
        const QRectF row(kEdge, kEdge + static_cast<double>(at) * kRow, width() - 2 * kEdge, kRow);
        if (static_cast<int>(at) == m_chosen)
            paintBox(painter, row, kKeyRadius, dyes.woad, {});
        const QRectF inner = row.adjusted(kSpace8, 0, -kSpace8, 0);
        const QString phone = words(customer.phone);
        const double phoneWide = widthOf(phone, Type::Small);
        paintLine(painter, inner, phone, Type::Small, dyes.ink2, Qt::AlignRight);
        const QString name =
            QFontMetricsF(fontOf(Type::BodyStrong))
                .elidedText(words(customer.name), Qt::ElideRight, inner.width() - phoneWide - kSpace12);
        paintLine(painter, inner, name, Type::BodyStrong, dyes.ink);
    }
}

} // namespace holdfast::app
