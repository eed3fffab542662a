// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The part of a form that asks which lot is meant, where several hang at one place of the rail: the washed,
// the unwashed, those that dry. A single lot is not asked about.

#include "app/desk/shop_desk.h"

#include <QObject>

#include <optional>
#include <vector>

namespace holdfast::app {

class Form;
class OptionList;

class LotPick : public QObject {
    Q_OBJECT

public:
    // `question` is asked above the lots.
    LotPick(Form& form, ShopDesk& desk, std::vector<BlankLot> lots, const QString& question);

    const BlankLot* lot() const; // none: not chosen yet
    // Marks that none is chosen.
    void check();

signals:
    void changed();

private:
    Form& m_form;
    std::vector<BlankLot> m_lots;
    OptionList* m_list = nullptr; // where there are several
};

// The lot named, or all that hang at the style, size and colour named, in the order in which they are used.
std::vector<BlankLot> lotsIn(ShopDesk& desk, const SlipTarget& matter);
// One lot as lotWords says it; of several what they have in common: "Tee, M, Moss".
QString lotsWords(const ShopFacts& facts, const std::vector<BlankLot>& lots);

} // namespace holdfast::app
