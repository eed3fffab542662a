// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/log_reading.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QFile>

namespace holdfast::app {

namespace {

struct LogReading {
    Q_DECLARE_TR_FUNCTIONS(LogReading)
};

constexpr qint64 kLargestFile = 256LL * 1024 * 1024;

Result<QByteArray> contentOf(const QString& path) {
    QFile file(path);
    if (!file.exists())
        return fieldError("path", inWindow(LogReading::tr("There is no file of this name.")));
    if (file.size() > kLargestFile)
        return fieldError("path",
                          inWindow(LogReading::tr("The file is larger than 256 MB; no climate log is.")));
    if (!file.open(QIODevice::ReadOnly))
        return fieldError("path",
                          inWindow(LogReading::tr("The file cannot be opened: %1.").arg(file.errorString())));
    QByteArray content = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return fieldError("path",
                          inWindow(LogReading::tr("The file cannot be read: %1.").arg(file.errorString())));
    return content;
}

} // namespace

Result<ClimateLog> readLog(const QString& path, const OffsetAt& offsetAt, std::optional<DateOrder> dateOrder,
                           const std::function<bool(double share)>& progress) {
    const auto content = contentOf(path);
    if (!content.ok())
        return content.error();
    auto log = readClimateLog({content->constData(), static_cast<std::size_t>(content->size())}, offsetAt,
                              progress, dateOrder);
    if (!log.ok())
        return fieldError("path", log.error().message);
    return log;
}

} // namespace holdfast::app
