// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A notice on the desktop, outside the window, by the freedesktop.org Desktop Notifications Specification 1.2
// (org.freedesktop.Notifications on the session's bus). Where there is no bus or no service, nothing happens.
// Nothing here waits for an answer.

#include <QDBusConnection>
#include <QObject>
#include <QString>

#include <optional>

namespace holdfast::app {

// The bus of this session; none where there is none, which is never started for this.
std::optional<QDBusConnection> sessionBus();

class DesktopNotice : public QObject {
    Q_OBJECT

public:
    explicit DesktopNotice(std::optional<QDBusConnection> bus, QObject* parent = nullptr);

    // In the place of the one shown before.
    void show(const QString& summary, const QString& body, bool isUrgent);
    void withdraw();

signals:
    // The person chose it. The token lets a window come to the front where the desktop asks for one; may be
    // empty.
    void chosen(const QString& activationToken);

private slots:
    void takeAction(uint id, const QString& action);
    void takeToken(uint id, const QString& token);
    void takeClosed(uint id, uint reason);

private:
    void listen();

    std::optional<QDBusConnection> m_bus;
    bool m_isListening = false;
    uint m_shown = 0;           // the service's number for it; 0: none
    bool m_isWithdrawn = false; // before its number was known
    QString m_token;
};

} // namespace holdfast::app
