// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Four facts of a roll: its age by the calendar and by warmth, its use-by, and the hours it was kept outside
// its limits.

#include "core/shop/reckoned_shop.h"

#include <QWidget>

namespace holdfast::app {

class FactBlock;

class RollFacts : public QWidget {
    Q_OBJECT

public:
    explicit RollFacts(QWidget* parent = nullptr);

    void show(const ReckonedShop& shop, const FilmRoll& roll);

private:
    FactBlock* m_age = nullptr;
    FactBlock* m_warmAge = nullptr;
    FactBlock* m_useBy = nullptr;
    FactBlock* m_outside = nullptr;
};

} // namespace holdfast::app
