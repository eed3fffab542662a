// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The part of a form that asks for a new file: its whole path, and a button that chooses the folder.

#include <QString>

#include <filesystem>

namespace holdfast::app {

class Form;
class ShopDesk;

// Next to the shop, with what it is and the day in its name; a second one of the day gets a number.
QString usualNewFile(ShopDesk& desk, const QString& what, const QString& ending);
// The part is named "path"; `caption` is above the choice of a folder.
void askForNewFile(Form& form, const QString& label, const QString& path, const QString& caption);
// The file that is to be written, or an empty path with the reason said at the part.
std::filesystem::path newFileIn(Form& form);

} // namespace holdfast::app
