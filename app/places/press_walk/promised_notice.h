#pragma once
// Above what stands aside: the order that is promised today and does, with what frees it, and the key that
// leads to its card.

#include "app/places/press_walk/promised_aside.h"

#include <QAbstractButton>

namespace holdfast::app {

class PromisedNotice : public QAbstractButton {
    Q_OBJECT

public:
    explicit PromisedNotice(QWidget* parent = nullptr);

    void show(const PromisedAside& aside); // hidden where there is none

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    PromisedAside m_aside;
};

} // namespace holdfast::app
