// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/background_work.h"

#include "app/desk/formats.h"

namespace holdfast::app {

BackgroundWork::BackgroundWork(QObject* parent)
    : QObject(parent) {}

BackgroundWork::~BackgroundWork() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

bool BackgroundWork::begin(const QString& words, Work work) {
    if (m_isBusy)
        return false;
    if (m_thread.joinable())
        m_thread.join();
    m_isBusy = true;
    m_shouldStop = false;
    emit progressed(words, 0);
    m_thread = std::thread([this, words, work = std::move(work)] {
        double told = 0;
        const Result<std::string> outcome = work([&](double share) {
            // A hundred tellings are enough: the interface thread has other things to do.
            if (share - told >= 0.01) {
                told = share;
                QMetaObject::invokeMethod(
                    this, [this, words, share] { emit progressed(words, share); }, Qt::QueuedConnection);
            }
            return !m_shouldStop;
        });
        QMetaObject::invokeMethod(
            this, [this, outcome] { end(outcome); }, Qt::QueuedConnection);
    });
    return true;
}

void BackgroundWork::end(const Result<std::string>& outcome) {
    if (m_thread.joinable())
        m_thread.join();
    m_isBusy = false;
    if (outcome.ok())
        emit succeeded(words(*outcome));
    else
        emit failed(words(outcome.error().message));
}

} // namespace holdfast::app
