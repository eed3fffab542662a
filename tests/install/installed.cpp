// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

namespace holdfast::install_test {

namespace {

constexpr int kInstallPatience = 300'000; // ms: the slowest of them packs the whole program

} // namespace

Ran run(const QString& program, const QStringList& words, const QString& inFolder) {
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    if (!inFolder.isEmpty())
        process.setWorkingDirectory(inFolder);
    process.start(program, words);
    if (!process.waitForStarted())
        return {};
    process.waitForFinished(kInstallPatience);
    return {true, process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            QString::fromUtf8(process.readAll())};
}

const QString& installedTree() {
    static const QTemporaryDir folder;
    static const QString tree = [] {
        const Ran ran = run(QStringLiteral(CMAKE_PROGRAM),
                            {QStringLiteral("--install"), QStringLiteral(HOLDFAST_BUILD_DIR),
                             QStringLiteral("--prefix"), folder.path()});
        EXPECT_EQ(ran.status, 0) << ran.out.toStdString();
        return folder.path();
    }();
    return tree;
}

QString installed(const QString& path) {
    return installedTree() + QLatin1Char('/') + path;
}

QString textOf(const QString& path) {
    if (path.endsWith(QStringLiteral(".gz")))
        return run(QStringLiteral("gzip"), {QStringLiteral("-dc"), path}).out;
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

} // namespace holdfast::install_test
