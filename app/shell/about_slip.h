// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What this program is: its version, its licence, what it is made with; and the licences' own words. Two
// pages that lead to each other.

#include "app/slips/form_slip.h"

#include <functional>

namespace holdfast::app {

// To be read: the keyboard begins in the page, which it scrolls; the action leads to the other page.
class PageSlip : public FormSlip {
public:
    PageSlip(ShopDesk& desk, const QString& title, const QString& about, std::function<void()> turnOver,
             QWidget* parent);

    void begin() override;

protected:
    void act() override { m_turnOver(); }

private:
    std::function<void()> m_turnOver;
};

Slip* makeAboutSlip(ShopDesk& desk, std::function<void()> readLicences, QWidget* parent);
Slip* makeLicencesSlip(ShopDesk& desk, std::function<void()> readAbout, QWidget* parent);

} // namespace holdfast::app
