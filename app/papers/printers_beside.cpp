// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/printers_beside.h"

#include <utility>

namespace holdfast::app {

PrintersBeside::~PrintersBeside() {
    if (m_thread.joinable())
        m_thread.join();
}

void PrintersBeside::begin() {
    if (m_thread.joinable())
        return;
    m_thread = std::thread([this] {
        QMetaObject::invokeMethod(
            this,
            [this, queues = printQueues()] {
                m_thread.join();
                emit ended(queues);
            },
            Qt::QueuedConnection);
    });
}

} // namespace holdfast::app
