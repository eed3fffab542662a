// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/text_share.h"

#include <algorithm>

namespace holdfast::app {

namespace {

qreal& kept() {
    static qreal share = 1;
    return share;
}

} // namespace

void setTextShare(qreal share) {
    kept() = std::min<qreal>(share, 1);
}

qreal textShare() {
    return kept();
}

} // namespace holdfast::app
