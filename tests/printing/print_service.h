// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A print service of the tests' own: Debian's cupsd with its own settings, spool and queues in a temporary
// folder, spoken to over a socket in that folder and so by nobody else. What a queue is sent arrives as a
// file, after all that CUPS's own filters do to it.

#include <QString>
#include <QStringList>
#include <QTemporaryDir>

#include <memory>
#include <utility>
#include <vector>

class QProcess;

namespace holdfast::app::test {

struct QueuePage {
    double width; // mm
    double height;
};

class PrintService {
public:
    // Started, and named to libcups by CUPS_SERVER, so before it is first asked for.
    PrintService();
    ~PrintService();
    static PrintService& instance();

    // Empty: it runs. Otherwise why not.
    const QString& fault() const { return m_fault; }

    // A queue whose first page is what it holds.
    void addQueue(const QString& name, const std::vector<QueuePage>& pages);
    void removeQueue(const QString& name);
    // lpadmin, cupsdisable, cupsreject and their kin; what they print.
    QString tool(const QString& program, const QStringList& arguments);

    // The PDF that arrived at the queue since it was asked last; empty where none did within some seconds.
    QString arrivedAt(const QString& queue);
    int waitingAt(const QString& queue); // jobs

private:
    QString pathOf(const QString& name) const { return m_folder.filePath(name); }
    void writeSettings() const;
    void start();

    QTemporaryDir m_folder;
    std::unique_ptr<QProcess> m_service;
    QString m_fault;
};

} // namespace holdfast::app::test
