#include "app/shell/focus_round.h"

#include <QApplication>
#include <QWidget>

namespace holdfast::app {

bool moveFocusWithin(QWidget* part, bool forward) {
    QWidget* const from = QApplication::focusWidget();
    QWidget* at = from != nullptr && part->isAncestorOf(from) ? from : part;
    const QWidget* const begun = at;
    do {
        at = forward ? at->nextInFocusChain() : at->previousInFocusChain();
        if (at != from && part->isAncestorOf(at) && at->isVisible() && at->isEnabled() &&
            (at->focusPolicy() & Qt::TabFocus) != 0 && at->focusProxy() == nullptr) {
            at->setFocus(forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
            return true;
        }
    } while (at != begun);
    return from != nullptr && part->isAncestorOf(from);
}

} // namespace holdfast::app
