// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop's rules for prices in the form of its settings: what many cost less, what a short day costs more,
// usual extras and tax; and the price list of styles and decals.

#include "core/facts/shop_facts.h"

namespace holdfast::app {

class Form;

void addBillRules(Form& form, const ShopSettings& settings);
void readBillRules(Form& form, ShopSettings& settings);

void addPriceList(Form& form, const ShopFacts& facts);
void readPriceList(Form& form, const ShopFacts& facts, ShopSettings& settings);

} // namespace holdfast::app
