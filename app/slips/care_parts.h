// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The parts of a form that ask what a label allows, axis by axis and in words only; below them the care text
// as it will be said.

#include "core/facts/care_limits.h"

#include <QString>

namespace holdfast::app {

class Form;

void addCareParts(Form& form, const CareLimits& care);
CareLimits readCare(Form& form);

} // namespace holdfast::app
