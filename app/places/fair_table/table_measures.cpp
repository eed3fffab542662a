// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_measures.h"

#include "app/widgets/choice.h"

#include <QAbstractButton>

namespace holdfast::app {

void makeTall(Choice* segments) {
    for (QAbstractButton* segment : segments->findChildren<QAbstractButton*>())
        segment->setMinimumHeight(kStallTarget);
}

void keepRoom(QWidget* widget, bool isKept) {
    QSizePolicy policy = widget->sizePolicy();
    policy.setRetainSizeWhenHidden(isKept);
    widget->setSizePolicy(policy);
}

} // namespace holdfast::app
