#include "app/widgets/finger_scroll.h"

#include <QAbstractScrollArea>
#include <QScroller>
#include <QScrollerProperties>

namespace holdfast::app {

void letFingerScroll(QAbstractScrollArea* area) {
    // A finger only: a mouse that is dragged marks or moves what it is on.
    QScroller::grabGesture(area->viewport(), QScroller::TouchGesture);
    QScroller* scroller = QScroller::scroller(area->viewport());
    QScrollerProperties properties = scroller->scrollerProperties();
    // It stops at its ends, as everything here does.
    for (const auto metric :
         {QScrollerProperties::HorizontalOvershootPolicy, QScrollerProperties::VerticalOvershootPolicy})
        properties.setScrollMetric(metric, QVariant::fromValue(QScrollerProperties::OvershootAlwaysOff));
    scroller->setScrollerProperties(properties);
}

} // namespace holdfast::app
