// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Plays a sound through the desktop's own sound service: PulseAudio, PipeWire or ALSA, whichever there is. A
// service that is slow, silent or not there never keeps the window waiting: it is asked on a thread of its
// own.

#include <QByteArray>
#include <QObject>
#include <QString>

#include <memory>

namespace holdfast::app {

class SoundPlayer : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    // A sound file. Returns at once; what came of it is said by one of the signals.
    virtual void play(const QByteArray& wave) = 0;

signals:
    void played(); // the service took it
    void failed(); // there is no service, or it refused
};

std::unique_ptr<SoundPlayer> desktopSounds();

} // namespace holdfast::app
