#pragma once
// The garments of one order: drawing, number, decals, price, where each is, and what frees one that is held.
// One stop for Tab; ↑↓ move, Enter frees.

#include "app/places/order_book/order_view.h"
#include "app/theme/tokens.h"

#include <QWidget>

namespace holdfast::app {

class GarmentLines : public QWidget {
    Q_OBJECT

public:
    explicit GarmentLines(QWidget* parent = nullptr);

    void show(const OrderView& view);
    std::optional<GarmentId> current() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void freeAsked(holdfast::FreeingAct act, holdfast::app::Matter matter);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

private:
    struct Line {
        const Garment* garment;
        QString name, decals, price, where, whereIcon, free;
        Role whereInk;
        std::optional<FreeingAct> act;
        Matter matter;
    };
    int heightOf(const Line& line) const;
    int lineAt(QPoint at) const;
    QRectF freeBox(std::size_t line) const;
    void freeCurrent();
    void say();

    std::optional<OrderView> m_view;
    std::vector<Line> m_lines;
    int m_current = 0;
};

} // namespace holdfast::app
