// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/window_call.h"

#include <QCryptographicHash>
#include <QDBusMessage>

#include <string>
#include <system_error>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kAnswerWithin = 3'000; // ms; a window that is busy for longer is not waited for
constexpr int kNameBytes = 16;       // of the hash: no two shops of one person share them

const QString kCallPath = QStringLiteral("/holdfast");
const QString kCallInterface = QStringLiteral("org.freedesktop.Application");
const QString kTokenKey = QStringLiteral("activation-token");

// One name for a shop, whichever way its file is written; parts of a bus name begin with a letter.
QString nameOnBus(const std::filesystem::path& shop) {
    std::error_code unknown;
    const std::filesystem::path canonical = std::filesystem::canonical(shop, unknown);
    const std::string path = (unknown ? std::filesystem::absolute(shop, unknown) : canonical).string();
    const QByteArray hash =
        QCryptographicHash::hash(QByteArray::fromStdString(path), QCryptographicHash::Sha256);
    return QStringLiteral("holdfast.shop.file") + QString::fromLatin1(hash.left(kNameBytes).toHex());
}

} // namespace

QString activationToken() {
    for (const char* name : {"XDG_ACTIVATION_TOKEN", "DESKTOP_STARTUP_ID"})
        if (qEnvironmentVariableIsSet(name))
            return qEnvironmentVariable(name);
    return {};
}

bool callWindowOf(const std::filesystem::path& shop, const std::optional<QDBusConnection>& bus,
                  const QString& activationToken) {
    if (!bus)
        return false;
    QDBusMessage activate = QDBusMessage::createMethodCall(nameOnBus(shop), kCallPath, kCallInterface,
                                                           QStringLiteral("Activate"));
    activate.setAutoStartService(false);
    QVariantMap platformData;
    if (!activationToken.isEmpty())
        platformData.insert(kTokenKey, activationToken);
    activate << platformData;
    return bus->call(activate, QDBus::Block, kAnswerWithin).type() == QDBusMessage::ReplyMessage;
}

WindowCall::WindowCall(std::function<std::optional<QDBusConnection>()> bus, QObject* parent)
    : QObject(parent)
    , m_askBus(std::move(bus)) {}

WindowCall::~WindowCall() {
    stopAnswering();
}

void WindowCall::answerFor(const std::filesystem::path& shop) {
    stopAnswering();
    if (shop.empty())
        return;
    if (!m_bus)
        m_bus = m_askBus();
    if (!m_bus)
        return;
    const QString name = nameOnBus(shop);
    m_bus->registerObject(kCallPath, this, QDBusConnection::ExportScriptableSlots);
    if (m_bus->registerService(name))
        m_name = name;
}

void WindowCall::stopAnswering() {
    if (m_name.isEmpty())
        return;
    m_bus->unregisterService(std::exchange(m_name, {}));
    m_bus->unregisterObject(kCallPath);
}

void WindowCall::Activate(const QVariantMap& platformData) {
    emit called(platformData.value(kTokenKey).toString());
}

} // namespace holdfast::app
