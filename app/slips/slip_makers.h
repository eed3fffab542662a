// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Each slip's maker, by family. None is made where what it is about is gone.

#include "app/slips/slip.h"

namespace holdfast::app {

// blank styles and lots
Slip* makeReadLabel(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeMarkNotPrewashed(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChooseWayRound(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeNoteLawChecked(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeReceiveBlanks(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCorrectCount(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeAddStyle(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangeStyle(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCopyStyle(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangeBlank(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeMarkDry(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeMeasureShrinkage(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);

// films, rolls and the places they are stored in
Slip* makeReceiveRoll(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeRollMove(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeTestStrip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeUseUpRoll(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeRecordReading(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCorrectReading(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeImportReadings(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeAddFilm(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeRecipe(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeFilmSheet(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeNextShade(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangePlace(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangeFilm(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeMiscut(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);

// presses
Slip* makeCheckPress(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeAddPress(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangePress(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);

// orders and garments
Slip* makeLayers(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeConfirmWording(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeTakeMoney(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeMovePromise(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCustomer(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeJoinCustomers(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeForgetCustomer(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makePartOrder(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeInvoiceSlip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCreditNoteSlip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeOrderNote(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCancelOrder(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCameBack(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeAnswerClaim(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeWaive(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeSpoil(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);

// the shop
Slip* makeOrdersFile(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeCountTill(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeAddFair(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeChangeFair(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeScanner(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);
Slip* makeSettings(ShopDesk& desk, const SlipTarget& matter, QWidget* parent);

} // namespace holdfast::app
