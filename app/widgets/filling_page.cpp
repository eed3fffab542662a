// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/filling_page.h"

#include <QLayout>
#include <QResizeEvent>

#include <algorithm>

namespace holdfast::app {

QSize FillingPage::minimumSizeHint() const {
    const QSize least = QWidget::minimumSizeHint();
    if (layout() == nullptr || !layout()->hasHeightForWidth())
        return least;
    const int broken = layout()->minimumHeightForWidth(std::max(width(), least.width()));
    return {least.width(), std::max(least.height(), broken)};
}

void FillingPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        updateGeometry();
}

} // namespace holdfast::app
