// SPDX-License-Identifier: GPL-3.0-or-later
// The Debian package that CPack makes of this build, looked at by Debian's lintian, and run from where it
// unpacks.

#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QPluginLoader>
#include <QStandardPaths>
#include <QTemporaryDir>

namespace holdfast::install_test {
namespace {

class Package : public testing::Test {
protected:
    static void SetUpTestSuite() {
        s_folder = new QTemporaryDir;
        s_packed = run(QStringLiteral(CPACK_PROGRAM),
                       {QStringLiteral("-G"), QStringLiteral("DEB"), QStringLiteral("-B"), s_folder->path(),
                        QStringLiteral("--config"), QStringLiteral(HOLDFAST_BUILD_DIR "/CPackConfig.cmake")});
        const QStringList packages = QDir(s_folder->path()).entryList({QStringLiteral("*.deb")});
        if (!packages.isEmpty())
            s_package = s_folder->filePath(packages.front());
    }
    static void TearDownTestSuite() {
        delete s_folder;
        s_folder = nullptr;
    }
    void SetUp() override {
        NEED_PROGRAM("dpkg-shlibdeps");
        ASSERT_EQ(s_packed.status, 0) << s_packed.out.toStdString();
        ASSERT_FALSE(s_package.isEmpty());
    }

    static QString field(const char* name) {
        return run(QStringLiteral("dpkg-deb"), {QStringLiteral("-f"), s_package, QString::fromLatin1(name)})
            .out.trimmed();
    }

    static inline QTemporaryDir* s_folder = nullptr;
    static inline Ran s_packed;
    static inline QString s_package;
};

TEST_F(Package, LintianFindsNothing) {
    NEED_PROGRAM("lintian");
    const Ran ran = run(QStringLiteral("lintian"),
                        {QStringLiteral("--fail-on"), QStringLiteral("error,warning"),
                         QStringLiteral("--no-cfg"), QStringLiteral("--allow-root"), s_package});
    EXPECT_EQ(ran.status, 0) << ran.out.toStdString();
    EXPECT_TRUE(ran.out.trimmed().isEmpty()) << ran.out.toStdString();
}

TEST_F(Package, AsksForTheLibrariesItIsLinkedWith) {
    const QString depends = field("Depends");
    for (const char* library :
         {"libqt6widgets6", "libqt6charts6", "libsqlite3-0", "libsodium23", "libqrencode4", "libcups2"})
        EXPECT_TRUE(depends.contains(QString::fromLatin1(library)))
            << library << " not in " << depends.toStdString();
    EXPECT_EQ(field("Version"), QStringLiteral(HOLDFAST_VERSION));
}

TEST_F(Package, RunsFromWhereItUnpacks) {
    const QTemporaryDir there;
    ASSERT_EQ(run(QStringLiteral("dpkg-deb"), {QStringLiteral("-x"), s_package, there.path()}).status, 0);
    const QString program = there.filePath(QStringLiteral("usr/bin/holdfast"));
    const Ran version = run(program, {QStringLiteral("--version")});
    EXPECT_EQ(version.status, 0);
    EXPECT_TRUE(version.out.startsWith(QStringLiteral("holdfast " HOLDFAST_VERSION "\n")))
        << version.out.toStdString();
    // The chart is where the installed program looks for it.
    QPluginLoader chart(
        QDir(there.filePath(QStringLiteral("usr/bin")))
            .filePath(QStringLiteral(HOLDFAST_INSTALLED_CHART_FOLDER "/holdfast_climate_chart.so")));
    EXPECT_TRUE(chart.load()) << chart.errorString().toStdString();
}

} // namespace
} // namespace holdfast::install_test
