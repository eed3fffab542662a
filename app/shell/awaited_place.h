// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Shown instead of a place until the climate log is read: what rolls may be used, and so what is held and
// what is walked, is not known before, and nothing is shown that the readings might take back.

#include "app/desk/place.h"
#include "app/shell/places.h"

namespace holdfast::app {

class AwaitedPlace : public Place {
    Q_OBJECT

public:
    AwaitedPlace(ShopDesk& desk, const BuiltPlace& built, QWidget* parent = nullptr);

    const BuiltPlace& built() const { return m_built; }
    const SlipTarget& matter() const { return m_matter; } // that it was turned to last

    QString subtitle() const override;
    void opened() override { setFocus(); }
    void turnTo(const SlipTarget& matter) override { m_matter = matter; }

private:
    const BuiltPlace& m_built;
    SlipTarget m_matter;
    double m_share = 0; // of the log that is read
};

} // namespace holdfast::app
