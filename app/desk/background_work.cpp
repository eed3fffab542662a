// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/background_work.h"

#include "app/desk/formats.h"

namespace holdfast::app {

bool BackgroundWork::begin(const QString& words, Work work) {
    if (isBusy())
        return false;
    emit progressed(words, 0);
    m_beside.begin([work = std::move(work)](
                       auto& reporter) { return work([&](double share) { return reporter.report(share); }); },
                   [this](const Outcome& outcome) { end(outcome); },
                   [this, words](double share) { emit progressed(words, share); });
    return true;
}

void BackgroundWork::end(const Outcome& outcome) {
    const QPointer<BackgroundWork> self(this);
    if (outcome.inWindow)
        outcome.inWindow();
    if (!self)
        return;
    if (outcome.told.ok())
        emit succeeded(words(*outcome.told));
    else
        emit failed(words(outcome.told.error().message));
}

} // namespace holdfast::app
