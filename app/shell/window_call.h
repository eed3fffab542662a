// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Holdfast started a second time with the same shop calls the window that has it open, which comes to the
// front. It is called over the session's bus, by the freedesktop.org interface for programs that are running
// already (org.freedesktop.Application: Desktop Entry Specification 1.5, "D-Bus Activation"), under a name
// made from the shop file's. Where there is no bus, nobody answers.

#include <QDBusConnection>
#include <QObject>
#include <QString>
#include <QVariantMap>

#include <filesystem>
#include <functional>
#include <optional>

namespace holdfast::app {

// The token by which the desktop lets the window that is called come to the front; empty where this program
// was not started from a desktop. Asked before there is a QApplication, which uses it up.
QString activationToken();

// True where the window that has this shop open answered.
bool callWindowOf(const std::filesystem::path& shop, const std::optional<QDBusConnection>& bus,
                  const QString& activationToken);

class WindowCall : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.Application")

public:
    // `bus` is asked when there is first a shop to answer for.
    explicit WindowCall(std::function<std::optional<QDBusConnection>()> bus, QObject* parent = nullptr);
    ~WindowCall() override;

    // From now on for this shop alone; for none where the path is empty.
    void answerFor(const std::filesystem::path& shop);

signals:
    void called(const QString& activationToken);

public slots:
    Q_SCRIPTABLE void Activate(const QVariantMap& platformData);

private:
    void stopAnswering();

    std::function<std::optional<QDBusConnection>()> m_askBus;
    std::optional<QDBusConnection> m_bus;
    QString m_name; // on the bus; empty: none
};

} // namespace holdfast::app
