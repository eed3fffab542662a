// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The printers of this machine, asked for on a thread of its own: a print service in the network may take
// seconds.

#include "app/papers/print_queue.h"

#include <QObject>

#include <thread>

namespace holdfast::app {

class PrintersBeside : public QObject {
    Q_OBJECT

public:
    explicit PrintersBeside(QObject* parent = nullptr)
        : QObject(parent) {}
    ~PrintersBeside() override; // waits

    // One question at a time: while one is open, nothing happens.
    void begin();

signals:
    void ended(const std::vector<holdfast::app::PrintQueue>& queues);

private:
    std::thread m_thread;
};

} // namespace holdfast::app
