// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The dyes: every colour of the program, by day and in the evening. The only place where a colour is written.
// Ask tokens() when painting and keep no copy: setLight() changes them under a running window.

#include <QColor>

class QApplication;

namespace holdfast::app {

enum class Light { Day, Evening };

struct Tokens {
    QColor ground;     // window
    QColor card;       // cards, fields
    QColor sunk;       // wells, table heads
    QColor thread;     // hairlines
    QColor edge;       // edges of controls
    QColor ink;        // text
    QColor ink2;       // second text
    QColor ink3;       // quiet text
    QColor indigo;     // action, focus
    QColor indigoDeep; // action under the pointer
    QColor onIndigo;   // text on indigo
    QColor woad;       // selected, current
    QColor madder;     // held: text
    QColor madderTint; // held: ground
    QColor weld;       // caution: text
    QColor weldTint;   // caution: ground
    QColor weldHatch;  // hatching only
    QColor green;      // done, ready: text
    QColor greenTint;  // done, ready: ground
    QColor rail;       // the rail of places
    QColor railInk;
    QColor railThread;
    QColor board; // shelf, rail wood
    QColor boardEdge;
    QColor bench; // cutting bench
    QColor benchLine;
};

// A token by name, for widgets that must follow a change of light: tokens().*role.
using Role = QColor Tokens::*;

// What a chip or a banner says about a thing. Never the only sign: an icon and words go with it.
enum class Tone { Plain, Working, Held, Caution, Ready };

const Tokens& tokens();
const Tokens& tokens(Light light);
Light light();

// Styles the program: fonts, palette, style. Call once before the first window and again to change the
// light; every open window is notified by a PaletteChange event and painted again.
void setLight(QApplication& application, Light light);

QColor toneInk(Tone tone);
QColor toneGround(Tone tone);
Role toneRole(Tone tone);

// `colour` with its lightness moved towards `towards` by `share` (0 to 1): lines on cloth, rings of a roll.
QColor blended(const QColor& colour, const QColor& towards, double share);

} // namespace holdfast::app
