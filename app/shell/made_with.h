// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What Holdfast is made with: the libraries that it runs with and the fonts that it brings along, each with
// its licence. docs/licences.md lists the same.

#include <QString>
#include <QVector>

namespace holdfast::app {

struct MadeWith {
    QString name; // as its makers write it
    QString version;
    QString use;
    QString licence; // by its SPDX name, or in words where it has none
    QString text;    // of the licence, a file in the program, where the licence asks for it to come along
};

// Libraries say their version themselves where they can; the others, the one that this program was built
// with.
QVector<MadeWith> librariesUsed();
QVector<MadeWith> fontsBundled();

// The licence of Holdfast itself, a file in the program.
QString ownLicenceText();

} // namespace holdfast::app
