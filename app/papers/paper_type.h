// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Letters on paper: sizes in millimetres of the whole letter's body, in the bundled fonts, and what fits in a
// width. Measured without a device, so that paper, picture and drawing break their lines alike. Fonts must
// have been loaded on the interface thread (fontOf) before this is asked for on another.

#include <QFont>
#include <QString>
#include <QStringList>

namespace holdfast::app {

struct PaperType {
    double millimetres = 3;
    QFont::Weight weight = QFont::Normal;
    bool isSerif = false;

    PaperType at(double size) const { return {size, weight, isSerif}; }
};

// What everything on paper is drawn and measured in.
inline constexpr double kTenthsOfMillimetre = 10;

// In tenths of a millimetre; text taken out of a PDF again loses what shaping joins, so nothing is shaped.
QFont paperFont(const PaperType& type);

double paperWidth(const QString& text, const PaperType& type); // mm
double lineStep(const PaperType& type);                        // mm from baseline to baseline

// The same letters as large as they fit on one line, never smaller than `floor` mm, where they may stay too
// wide.
PaperType shrunkTo(double width, const QString& text, const PaperType& type, double floor);

// In lines no wider than this: at spaces, but for one between a number and its unit; within a word only where
// the word alone is too wide.
QStringList brokenInto(double width, const QString& text, const PaperType& type);

// On one line, or on this many, its end left out where it is too long. For names only, never for a reason, a
// time or an amount.
QString cutTo(double width, const QString& text, const PaperType& type);
QString cutToLines(double width, const QString& text, const PaperType& type, qsizetype most);

} // namespace holdfast::app
