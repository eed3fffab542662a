// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Work that takes longer than a hand waits and ends with a sentence for the person: done beside the window,
// its progress shown, stopped when asked. One at a time. What reads the shop opens a reading connection of
// its own.

#include "app/desk/beside.h"
#include "core/trade/result.h"

#include <QObject>
#include <QString>

#include <functional>
#include <string>

namespace holdfast::app {

class BackgroundWork : public QObject {
    Q_OBJECT

public:
    // Share done, 0 to 1; false asks the work to stop.
    using Progress = std::function<bool(double)>;

    struct Outcome {
        Outcome(Result<std::string> ended, std::function<void()> then = {})
            : told(std::move(ended))
            , inWindow(std::move(then)) {}
        Outcome(std::string words)
            : told(std::move(words)) {}
        Outcome(Error error)
            : told(std::move(error)) {}

        Result<std::string> told;       // to the person
        std::function<void()> inWindow; // done on the interface thread before it is told
    };
    using Work = std::function<Outcome(const Progress& progress)>;

    using QObject::QObject;

    bool isBusy() const { return m_beside.isUnderWay(); }
    // Refused (false) while other work is under way.
    bool begin(const QString& words, Work work);
    void stop() { m_beside.stop(); }

signals:
    void progressed(const QString& words, double share);
    void succeeded(const QString& words);
    void failed(const QString& reason);

private:
    void end(const Outcome& outcome);

    Beside<Outcome> m_beside;
};

} // namespace holdfast::app
