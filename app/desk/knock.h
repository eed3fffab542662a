// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The sound that says that a count has ended: two knocks on wood, the second lower. Made here, note by note.

#include <QByteArray>

namespace holdfast::app {

enum class Loudness { Off, Soft, Loud };

// A sound file (RIFF WAVE: one channel, 16 bits, 44,100 samples a second). Nothing where it is off. `times`
// is how often the two knocks are heard.
QByteArray knockWave(Loudness loudness, int times = 1);

// How loud this computer is to be; loud until the person chose otherwise.
Loudness keptLoudness();
void keepLoudness(Loudness loudness);

} // namespace holdfast::app
