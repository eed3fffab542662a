// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/desktop_sounds.h"

#include <QCoreApplication>
#include <QFile>
#include <QTemporaryDir>
#include <QThread>

#include <canberra.h>

#include <atomic>

namespace holdfast::app {

namespace {

constexpr int kMostWaiting = 2;        // more than these would be heard long after their moment
constexpr int kLongestGoodbye = 1'000; // milliseconds for a service to answer when the program ends

class SoundService : public QObject {
public:
    ~SoundService() override {
        if (m_service)
            ca_context_destroy(m_service);
    }

    // Blocks until the service has taken the sound, which it then plays by itself.
    bool play(const QString& path) {
        if (!m_service && ca_context_create(&m_service) != CA_SUCCESS) {
            m_service = nullptr;
            return false;
        }
        const QByteArray file = QFile::encodeName(path);
        const int taken = ca_context_play(m_service, 1, CA_PROP_MEDIA_FILENAME, file.constData(),
                                          CA_PROP_MEDIA_NAME, "A count at the press has ended",
                                          CA_PROP_MEDIA_ROLE, "event", CA_PROP_APPLICATION_NAME, "Holdfast",
                                          CA_PROP_CANBERRA_CACHE_CONTROL, "never", nullptr);
        if (taken == CA_SUCCESS)
            return true;
        // A service that went away may be back the next time.
        ca_context_destroy(m_service);
        m_service = nullptr;
        return false;
    }

private:
    ca_context* m_service = nullptr;
};

class DesktopSounds : public SoundPlayer {
public:
    DesktopSounds()
        : m_thread(new QThread)
        , m_service(new SoundService) {
        m_service->moveToThread(m_thread);
        connect(m_thread, &QThread::finished, m_service, &QObject::deleteLater);
        m_thread->start();
    }

    ~DesktopSounds() override {
        m_thread->quit();
        // A service that never answers is left to the end of the process.
        if (m_thread->wait(kLongestGoodbye))
            delete m_thread;
    }

    void play(const QByteArray& wave) override {
        if (wave.isEmpty() || m_waiting->load() >= kMostWaiting)
            return;
        const QString path = fileOf(wave);
        if (path.isEmpty()) {
            emit failed();
            return;
        }
        ++*m_waiting;
        QMetaObject::invokeMethod(
            m_service,
            [service = m_service, waiting = m_waiting, path, back = QPointer<DesktopSounds>(this)] {
                const bool isTaken = service->play(path);
                --*waiting;
                // Said on the window's thread, if it still wants to know.
                QMetaObject::invokeMethod(
                    qApp,
                    [back, isTaken] {
                        if (back && isTaken)
                            emit back->played();
                        else if (back)
                            emit back->failed();
                    },
                    Qt::QueuedConnection);
            },
            Qt::QueuedConnection);
    }

private:
    // The service plays from files.
    QString fileOf(const QByteArray& wave) {
        const QString path = m_folder.filePath(QString::number(qHash(wave)) + QStringLiteral(".wav"));
        if (!m_folder.isValid() || QFile::exists(path))
            return m_folder.isValid() ? path : QString();
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(wave) != wave.size())
            return {};
        return path;
    }

    QTemporaryDir m_folder;
    QThread* m_thread;
    SoundService* m_service;
    std::shared_ptr<std::atomic<int>> m_waiting = std::make_shared<std::atomic<int>>(0);
};

} // namespace

std::unique_ptr<SoundPlayer> desktopSounds() {
    return std::make_unique<DesktopSounds>();
}

} // namespace holdfast::app
