// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What belongs to this computer and not to a shop: where the window was, how large its text is, what the
// scanner at it types before a code, which printers take its papers, how loud it is. Kept in
// $XDG_CONFIG_HOME/holdfast/machine.ini; what cannot be read there is as if it had never been kept.

#include <QWidget>

namespace holdfast::app {

// Where the window was last, whether maximised; clamped to the free part of the screen it opens on. The first
// time it is as large as is usual, or maximised where that does not fit.
void showWhereItWas(QWidget& window);
void keepWhereItIs(const QWidget& window);

// Text and all about it, in percent: one of the steps from 80 to 160.
int textSize();
void keepTextSize(int percent);
int nextTextSize(int percent, int steps); // larger or smaller by a number of steps, no further than the ends
inline constexpr int kUsualTextSize = 100;

// What the scanner is set to type before each code; mostly nothing.
QString scannerPrefix();
void keepScannerPrefix(const QString& prefix);
inline constexpr int kLongestPrefix = 8;

// What another part of the program keeps; nothing where nothing was chosen. An empty text goes back to that.
QString machineSetting(const QString& name);
void keepMachineSetting(const QString& name, const QString& text);
extern const QString kLabelPrinterSetting;
extern const QString kSheetPrinterSetting;
extern const QString kLoudnessSetting;
extern const QString kBackupFolderSetting; // the second one, as a person chose it

// Has the windows of this process drawn at that size. Before the QApplication is made.
void applyTextSize();
// Takes back what applyTextSize() set, for a process that goes on as another.
void forgetTextSize();

} // namespace holdfast::app
