// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/awaited_place.h"

#include "app/widgets/empty_state.h"

#include <QVBoxLayout>

#include <cmath>

namespace holdfast::app {

AwaitedPlace::AwaitedPlace(ShopDesk& shopDesk, const BuiltPlace& built, QWidget* parent)
    : Place(shopDesk, parent)
    , m_built(built) {
    setFocusPolicy(Qt::StrongFocus);
    auto* whole = new QVBoxLayout(this);
    whole->addWidget(
        new EmptyState(built.icon(),
                       tr("The climate readings are being read. Which rolls may be used, and so what "
                          "is held, is known in a moment."),
                       {}));
    connect(&shopDesk, &ShopDesk::climateProgressed, this, [this](double share) {
        m_share = share;
        emit subtitleChanged();
    });
}

QString AwaitedPlace::subtitle() const {
    return tr("%1 % read").arg(std::lround(m_share * 100));
}

} // namespace holdfast::app
