// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/log_reading.h"

#include "app/desk/formats.h"

#include <QFile>

#include <memory>

namespace holdfast::app {

namespace {

constexpr qint64 kLargestFile = 256LL * 1024 * 1024;

Result<QByteArray> contentOf(const QString& path) {
    QFile file(path);
    if (!file.exists())
        return fieldError("path", plain(LogReading::tr("There is no file of this name.")));
    if (file.size() > kLargestFile)
        return fieldError("path",
                          plain(LogReading::tr("The file is larger than 256 MB; no climate log is.")));
    if (!file.open(QIODevice::ReadOnly))
        return fieldError("path",
                          plain(LogReading::tr("The file cannot be opened: %1.").arg(file.errorString())));
    QByteArray content = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return fieldError("path",
                          plain(LogReading::tr("The file cannot be read: %1.").arg(file.errorString())));
    return content;
}

Result<ClimateLog> logIn(const QString& path, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder,
                         const std::function<bool(double)>& progress) {
    const auto content = contentOf(path);
    if (!content.ok())
        return content.error();
    auto log = readClimateLog({content->constData(), static_cast<std::size_t>(content->size())}, offsetAt,
                              progress, dateOrder);
    if (!log.ok())
        return fieldError("path", log.error().message);
    return log;
}

} // namespace

LogReading::LogReading(QObject* parent)
    : QObject(parent) {}

LogReading::~LogReading() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void LogReading::begin(const QString& path, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder) {
    if (m_isBusy)
        return;
    m_isBusy = true;
    m_shouldStop = false;
    m_thread = std::thread([this, path, offsetAt, dateOrder] {
        const auto tellProgress = [this](double share) {
            QMetaObject::invokeMethod(
                this, [this, share] { emit progressed(share); }, Qt::QueuedConnection);
            return !m_shouldStop;
        };
        auto log = std::make_shared<Result<ClimateLog>>(logIn(path, offsetAt, dateOrder, tellProgress));
        QMetaObject::invokeMethod(
            this,
            [this, log] {
                m_thread.join();
                m_isBusy = false;
                emit ended(*log);
            },
            Qt::QueuedConnection);
    });
}

} // namespace holdfast::app
