// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A session bus of a test's own, which Debian's dbus-daemon runs.

#include <QDBusConnection>
#include <QProcess>
#include <QString>
#include <QStringList>

namespace holdfast::app::test {

class PrivateBus {
public:
    PrivateBus() {
        m_daemon.start(QStringLiteral("dbus-daemon"),
                       {QStringLiteral("--session"), QStringLiteral("--nofork"),
                        QStringLiteral("--nopidfile"), QStringLiteral("--nosyslog"),
                        QStringLiteral("--print-address")});
        if (m_daemon.waitForReadyRead(kBusPatience))
            m_address = QString::fromUtf8(m_daemon.readLine()).trimmed();
    }
    ~PrivateBus() {
        for (const QString& name : m_names)
            QDBusConnection::disconnectFromBus(name);
        m_daemon.terminate();
        m_daemon.waitForFinished(kBusPatience);
    }

    bool isThere() const { return !m_address.isEmpty(); }
    const QString& address() const { return m_address; }
    // A connection of this name, which is the test's alone.
    QDBusConnection connect(const QString& name) {
        m_names.append(name);
        return QDBusConnection::connectToBus(m_address, name);
    }

private:
    static constexpr int kBusPatience = 5000;

    QProcess m_daemon;
    QString m_address;
    QStringList m_names;
};

} // namespace holdfast::app::test
