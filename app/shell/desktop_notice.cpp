// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/desktop_notice.h"

#include <QCoreApplication>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QFileInfo>
#include <QStandardPaths>

namespace holdfast::app {

namespace {

const QString kService = QStringLiteral("org.freedesktop.Notifications");
const QString kPath = QStringLiteral("/org/freedesktop/Notifications");
const QString kChosen = QStringLiteral("default"); // the action of a click on the notice itself

QDBusMessage call(const QString& method) {
    return QDBusMessage::createMethodCall(kService, kPath, kService, method);
}

} // namespace

std::optional<QDBusConnection> sessionBus() {
    // Without an address Qt would start a bus of its own, which nobody listens on.
    const QString runtime = QStandardPaths::writableLocation(QStandardPaths::RuntimeLocation);
    if (!qEnvironmentVariableIsSet("DBUS_SESSION_BUS_ADDRESS") &&
        !QFileInfo::exists(runtime + QStringLiteral("/bus")))
        return std::nullopt;
    const QDBusConnection bus = QDBusConnection::sessionBus();
    return bus.isConnected() ? std::optional{bus} : std::nullopt;
}

DesktopNotice::DesktopNotice(std::optional<QDBusConnection> bus, QObject* parent)
    : QObject(parent)
    , m_bus(std::move(bus)) {}

void DesktopNotice::listen() {
    if (std::exchange(m_isListening, true))
        return;
    const auto hear = [this](const char* signal, const char* slot) {
        m_bus->connect({}, kPath, kService, QString::fromLatin1(signal), this, slot);
    };
    hear("ActionInvoked", SLOT(takeAction(uint, QString)));
    hear("ActivationToken", SLOT(takeToken(uint, QString)));
    hear("NotificationClosed", SLOT(takeClosed(uint, uint)));
}

void DesktopNotice::show(const QString& summary, const QString& body, bool isUrgent) {
    if (!m_bus)
        return;
    listen();
    m_isWithdrawn = false;
    const QVariantMap hints{
        {QStringLiteral("urgency"), QVariant::fromValue<uchar>(isUrgent ? 2 : 1)},
        {QStringLiteral("desktop-entry"), QStringLiteral("holdfast")},
        {QStringLiteral("suppress-sound"), true}, // the knock is heard already
    };
    QDBusMessage notify = call(QStringLiteral("Notify"));
    notify << QStringLiteral("Holdfast") << m_shown << QStringLiteral("holdfast") << summary << body
           << QStringList{kChosen, tr("Show the press walk")} << hints << -1;
    auto* answer = new QDBusPendingCallWatcher(m_bus->asyncCall(notify), this);
    connect(answer, &QDBusPendingCallWatcher::finished, this, [this, answer] {
        const QDBusPendingReply<uint> number = *answer;
        answer->deleteLater();
        if (number.isError())
            return;
        m_shown = number.value();
        if (m_isWithdrawn)
            withdraw();
    });
}

void DesktopNotice::withdraw() {
    m_isWithdrawn = true;
    if (!m_bus || m_shown == 0)
        return;
    QDBusMessage close = call(QStringLiteral("CloseNotification"));
    close << std::exchange(m_shown, 0u);
    m_bus->send(close);
}

void DesktopNotice::takeAction(uint id, const QString& action) {
    if (id != m_shown || id == 0 || action != kChosen)
        return;
    emit chosen(std::exchange(m_token, {}));
}

void DesktopNotice::takeToken(uint id, const QString& token) {
    if (id == m_shown)
        m_token = token;
}

void DesktopNotice::takeClosed(uint id, uint) {
    if (id == m_shown)
        m_shown = 0;
}

} // namespace holdfast::app
