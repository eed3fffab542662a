#include "app/widgets/vertical_scroll.h"

#include "app/theme/measures.h"

#include <QApplication>
#include <QBoxLayout>
#include <QPointer>
#include <QScrollBar>
#include <QTimer>

namespace holdfast::app {

VerticalScroll::VerticalScroll(QWidget* parent)
    : QScrollArea(parent) {
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWidgetResizable(true);
    setFocusPolicy(Qt::NoFocus);
    auto* inner = new QWidget;
    m_column = new QVBoxLayout(inner);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(0);
    setWidget(inner);
    // The ground of what it stands on shows through.
    inner->setAutoFillBackground(false);
    viewport()->setAutoFillBackground(false);
    verticalScrollBar()->setSingleStep(kSpace20);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now == nullptr || !widget()->isAncestorOf(now))
            return;
        showWhole(*now);
        // Again once it is laid out: it may have come just now, as a new row does.
        QTimer::singleShot(0, this, [this, shown = QPointer<QWidget>(now)] {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
            if (shown && shown->hasFocus() && widget()->isAncestorOf(shown))
                showWhole(*shown);
        });
    });
}

// What is higher than the room shows the part of it that matters itself. Not ensureWidgetVisible: of a line
// of text that shows the cursor only, not the field.
void VerticalScroll::showWhole(QWidget& child) {
    const QPoint middle = child.mapTo(widget(), child.rect().center());
    if (child.height() > viewport()->height()) {
        if (child.visibleRegion().isEmpty())
            ensureVisible(middle.x(), child.mapTo(widget(), QPoint(0, 0)).y(), 0, kSpace20);
        return;
    }
    ensureVisible(middle.x(), middle.y(), 0, child.height() / 2 + kSpace8);
}

QSize VerticalScroll::minimumSizeHint() const {
    // As wide as its column, so that nothing is cut at the side; as low as one target.
    return {widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width(), kTarget};
}

} // namespace holdfast::app
